"""The pages of the firm's desk."""
