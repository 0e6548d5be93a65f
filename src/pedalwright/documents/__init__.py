"""Documents: the dossier and the sheets, typeset from an assessment."""
