"""Whoever runs the site: is it alive, is it ready, what does it do. Nothing here says what anybody answered."""
