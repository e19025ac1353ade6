"""What only the householder's own pages show: the offer to hand over, its form, and what was sent."""
