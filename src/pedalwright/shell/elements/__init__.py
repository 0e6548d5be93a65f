"""What the bench is made of: triangles of sheet, bars and springs."""
