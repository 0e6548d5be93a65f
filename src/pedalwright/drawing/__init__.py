"""Drawing: shapes, dimensions and sheets; it knows no pedals."""
