"""A bench for sheets, tubes and fasteners: finite elements that know no car."""
