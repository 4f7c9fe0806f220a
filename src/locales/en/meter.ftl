# Did it do what we said? Meter readings against the simulated year.

meter-own = The heater's own count, or a meter of its own
meter-electricity = The electricity bill of the house
meter-fuel = The gas or oil bill of the house

meter-bad-span = These days are { $days } apart. Take { $least } to { $most } days.
meter-bad-backwards = The second count is lower than the first. Did you swap them?
meter-bad-range = A reading lies between zero and { $most }.

meter-why-away = You were away for some of that time.
meter-why-cold-room = The room is cool, and cool air makes the heat pump work longer.
meter-why-counts-part = The count may leave out part of what it uses. See its manual.
meter-why-elements-mode = The elements did most of the heating. Set the mode that uses the heat pump first.
meter-why-elements-often = The elements helped often, because much hot water was used at once.
meter-why-filter = The air filter is dirty, or air cannot reach it.
meter-why-leak-or-loop = A hot tap drips, or a hot water pump runs all day.
meter-why-less-water = You use less hot water than you entered.
meter-why-locked-out = The room was too cold or too hot for the heat pump for many hours.
meter-why-more-water = You use more hot water than you entered. Count the showers of a week.
meter-why-rest-of-house = Something else in the house changed: heating, cooling, a car, more people.
meter-why-setpoint-down = The water is set cooler than you entered.
meter-why-setpoint-up = The water is set hotter than you entered.
meter-why-warm-room = The room was warmer than thought, which helps the heat pump.

meter-about = Enter two readings and their days: the heater's own count is best. A bill tells less, as the rest of the house is in it.
meter-as-expected = As expected
meter-compared = Over { $days } days, { $expected } was expected ({ $low } to { $high }), and { $measured } was measured: { $money } against { $said }.
meter-first = First count
meter-first-bill = Used a year before, in the same days
meter-from = First day
meter-last = Last count
meter-last-bill = Used in these days
meter-less = Less than expected
meter-look = Likely reasons, the likeliest first:
meter-more = More than expected
meter-to = Last day
meter-wait = Enter both days and both readings.
meter-which = What do you read?
