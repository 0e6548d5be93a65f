"""From the outline of a flat sheet to triangles whose sides follow every line that matters."""
