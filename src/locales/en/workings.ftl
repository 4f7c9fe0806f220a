# How figures were worked out: names, relations, sources.
