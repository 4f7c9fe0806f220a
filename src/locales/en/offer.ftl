# An installer's offer: the figures of a heater's label, and the prices of further work.

offer-figure-volume = Nominal volume
offer-figure-factor = Uniform energy factor (UEF)
offer-figure-first-hour = First-hour rating
offer-figure-input = Input: each element, or the burner
offer-figure-volts = Volts
offer-figure-breaker = Breaker it asks for
offer-figure-height = Height
offer-figure-diameter = Width across
offer-figure-weight = Weight empty
offer-figure-price = Installed price

adder-new-circuit = New circuit
adder-condensate-pump = Condensate pump
adder-louvred-door = Slatted (louvred) door
adder-expansion-tank = Expansion tank
adder-haul-away = Take the old heater away
adder-permit = Permit
adder-own = Other work

offer-heading = The offer
offer-labour = Labor
offer-in-every-job = in every job
offer-where-needed = where it is needed
