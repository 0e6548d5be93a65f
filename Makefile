# Needs only Python 3.11 or newer, make, git and pip. Plain `make` lists what can be made.
# Tools live in .venv; a stamp file for each layer makes the second run quick.

SHELL := /bin/sh
BIN := .venv/bin
# Pinned by hash, ready-built wheels only: nothing is compiled on your machine.
INSTALL := $(BIN)/python -m pip install --quiet --disable-pip-version-check --only-binary :all:

# The first interpreter that is new enough and really runs; `make PYTHON=...` overrides it.
NEW_ENOUGH := import sys; sys.exit(sys.version_info < (3, 11))
PYTHON = $(shell for p in python3.11 python3.12 python3.13 python3.14 python3 python; do \
	"$$p" -c "$(NEW_ENOUGH)" 2>/dev/null && command -v "$$p" && break; done)

# The invented car of the demo: larkfield, brackwater or saltmarsh.
CAR := larkfield

# A car's matrices are small: more threads cost more than they bring, most of all beside others.
export OPENBLAS_NUM_THREADS ?= 1

.DEFAULT_GOAL := help
.PHONY: help demo open test check fix bench lock clean
.DELETE_ON_ERROR:

help: ## List what can be made
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "  make %-8s %s\n", $$1, $$2 }' Makefile

demo: .venv/.package ## Make the environment and run the main job on an invented car, into out/
	$(BIN)/pedalwright demo $(CAR) -o out

open: demo ## Make the demo and open its first attempt on a page in the browser
	$(BIN)/pedalwright open out/$(CAR)-first.toml

test: .venv/.package .venv/.dev ## Run all tests
	$(BIN)/python -m pytest

check: .venv/.package .venv/.dev ## Check format, lint, types and imports; changes nothing
	$(BIN)/ruff format --check .
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/basedpyright
	$(BIN)/lint-imports

fix: .venv/.package .venv/.dev ## Rewrite format, what the linter can mend, and the made pages
	$(BIN)/ruff check --fix-only .
	$(BIN)/ruff format .
	$(BIN)/python docs/make_pages.py

bench: .venv/.package .venv/.dev ## Measure the speed of the main job
	$(BIN)/python -m benchmarks

# uv is used here only; it resolves for every Python and platform at once.
LOCK := .venv/lock/bin/uv pip compile pyproject.toml --group build --quiet --upgrade \
	--universal --fork-strategy fewest --python-version 3.11 --no-build --generate-hashes \
	--no-header --no-emit-index-url --no-emit-find-links

lock: .venv/.made ## Choose the newest fitting versions and pin them in requirements/
	test -x .venv/lock/bin/uv || $(BIN)/python -m venv .venv/lock
	.venv/lock/bin/python -m pip install --quiet --disable-pip-version-check --upgrade uv
	$(LOCK) --output-file requirements/run.txt
	$(LOCK) --group test --group dev --constraint requirements/run.txt \
		--output-file requirements/dev.txt

clean: ## Remove the environment, caches and everything made
	rm -rf .venv out build dist .mypy_cache .pytest_cache .ruff_cache .hypothesis
	rm -rf .import_linter_cache
	find src tests -name __pycache__ -type d -prune -exec rm -rf {} +

# Some systems split pip off their venv; then the system's own pip puts one in.
.venv/.made:
	@test -n "$(PYTHON)" || { echo "pedalwright needs Python 3.11 or newer, and none was found.\
	 Install one, or name it: make PYTHON=/path/to/python3.11 $(MAKECMDGOALS)" >&2; exit 1; }
	@echo "Making .venv with $(PYTHON)"
	@$(PYTHON) -m venv .venv >/dev/null 2>&1 || { rm -rf .venv && \
	$(PYTHON) -m venv --without-pip .venv && \
	$(PYTHON) -m pip --python $(BIN)/python install --quiet --disable-pip-version-check pip; }
	@touch $@

.venv/.run: requirements/run.txt .venv/.made
	@echo "Installing what pedalwright runs with"
	@$(INSTALL) --require-hashes -r $<
	@touch $@

.venv/.package: pyproject.toml .venv/.run
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check \
	--no-deps --no-build-isolation --no-index --editable .
	@touch $@

.venv/.dev: requirements/dev.txt .venv/.run
	@echo "Installing the tools for tests and checks"
	@$(INSTALL) --require-hashes -r $<
	@touch $@
