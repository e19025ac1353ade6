"""One job sheet in many forms. Each takes the plain values of `shapes` and nothing else, so an old sheet stays as it
was written."""
