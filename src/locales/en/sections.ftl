# Sections of the question list, and small words about where a value came from.

section-household = Your household
    .about = Who lives there, and how you use hot water.
section-heater = The heater you have
    .about = What stands there now, how old it is, and how it looks.
section-room = The room
    .about = A heat pump water heater takes its heat from the air around it. So the room counts.
section-drain = A drain
    .about = A heat pump makes a little water, like a cold glass in summer. It needs somewhere to go.
section-circuit = The power supply
    .about = Which wires and breakers are there for the heater.
section-water = The water pipes
    .about = Pressure, valves and pipes at the heater. Most of this your plumber can tell.
section-place = Where you live
    .about = The weather outside decides how cold your tap water is.
section-money = Prices and money
    .about = What you pay for energy, what the work costs, and how far ahead to look.

# Where a value came from.
from-assumed = assumed
    .about = Nobody said, so the page took a usual value.
from-answered = answered
    .about = Somebody answered this.
from-measured = measured
    .about = Somebody measured this, or read it off the thing itself.

# How a check came out.
fit-fits = Fits
fit-fits-with-work = Fits with some work
fit-measure-first = Measure first
fit-does-not-fit = Does not fit

# Who can usually answer.
who-householder = You can usually answer this.
who-on-site = Best answered standing in front of the heater.
who-installer = Your installer knows this best.

# What an answer moves.
affects-energy = energy use
affects-comfort = hot water at the busiest hour
affects-fit = what fits
affects-cost = money
affects-timing = when to act
