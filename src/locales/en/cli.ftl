# The headless command.
