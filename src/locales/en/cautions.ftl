# The usual cautions.
