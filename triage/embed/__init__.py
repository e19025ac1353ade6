"""The check in other people's pages: the script a firm pastes, the frame's first address, the firm's colour.

The frame shows the householder's pages by their addresses and imports none of them.
"""
