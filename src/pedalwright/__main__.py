"""`python -m pedalwright` is the same as the command `pedalwright`."""

from pedalwright.cli import main

if __name__ == "__main__":
    main()
