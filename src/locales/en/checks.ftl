# Checks: names, findings, work.
