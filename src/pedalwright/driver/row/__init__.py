"""Row: the pads side by side, the steps between them, and the shoes on them."""
