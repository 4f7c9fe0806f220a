# The report as plain text.

report-title = Tankful: advice on a water heater
report-title-of = Tankful: advice on a water heater for { $name }
report-reasons = Why
report-table = Side by side, over { $years }
report-column-heater = Heater
report-column-upfront = To buy
report-column-energy = Energy a year
report-column-energy-cost = Cost a year
report-column-total = All costs
report-column-payback = Pays back in
report-column-morning = Busiest morning
report-column-fit = Fits?
report-morning-warm = stays warm
report-morning-cold = runs cold
report-no-payback = never
report-none = –
report-findings = What the checks ask for
report-rule = Rule: { $rule }.
report-runners-up = Why not the others
report-settle-first = Settle this first
report-cautions = Take care
report-assumed = Nobody answered these, so a usual value was taken
report-work-maybe = This may be needed:
report-extras = Possible extras of the offer
