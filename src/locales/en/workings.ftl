# How figures were worked out: names, relations, sources.

figure-breaker = Breaker there now
figure-coldest = Coldest hour in the room, simulated
figure-drain-rise = Height of the drain above the outlet
figure-drain-run = Way to the drain
figure-element = Power of an element
figure-free-air = Air the heater asks for
figure-headroom = Height there is
figure-room-volume = Air in the room
figure-room-winter = Room in winter
figure-tank-diameter = Width of the tank
figure-tank-height = Height of the tank
figure-volts = Voltage
figure-way-in = Narrowest place on the way in

# What hot water is used for.
use-shower = Shower
use-bath = Bath
use-sink = Sink
use-dishwasher = Dishwasher
use-clothes-washer = Laundry

# Figures that open to their working.

# The relations, in words.
relation-energy = We played through a year of your house, draw by draw. This is the power and fuel the heater used for it: the heat in the water drawn, plus the heat lost through the tank's skin, less the heat taken from the air.
relation-running = Electricity times its price, plus fuel times its price. Added to that: upkeep, and what the house's heating and cooling pay or save.
relation-upfront = The price put in, plus the work your house needs for it, less rebates.
relation-running-by-hour = Electricity times its mean price, plus fuel times its price. The mean price goes by how much of its power this heater uses at peak hours, as it runs by itself. We played that through, hour by hour. Added to that: upkeep, and what the house's heating and cooling pay or save. Their power is taken as used evenly round the clock.
relation-net-present-cost = What you pay at the start, each year's running cost, and each new heater when one is due. A cost that lies ahead counts for less, by the discount rate for each year. The worth of the life left in the last heater is taken off.
relation-saved = Running cost of the heater you have, less the running cost of this one.
relation-payback = The first moment when you have spent no more on this heater than on the old one. The old one is replaced when it fails.
relation-first-hour = A full, hot tank is drawn down at 3 gallons a minute, again and again for an hour. So the federal rating test asks. This is the hot water it gives.
relation-morning = The showers of your busiest hour, one after the other, from a full, hot tank. It is the day with the coldest tap water. This is the water that came out cooler than wanted.
relation-emission = Electricity times the carbon dioxide of the grid, plus fuel times its own. Added to that: the heat that the house's heating has to make up.

# What went in.
input-age = Age of the heater you have
input-asked = Warm water asked for
input-compared-year = Compared after
input-discount = Discount rate
input-drawn-a-day = Hot water drawn in a day
input-electricity = Electricity in a year
input-elements = Of which by the heating elements
input-energy-cost = Energy
input-flue-dirt = Heat kept from the water by lime and soot, since it was new
input-fuel = Fuel in a year
input-fuel-emission = Carbon dioxide of the fuel, kg for each kWh
input-grid-emission = Carbon dioxide of the grid, kg for each kWh
input-growth = Energy gets dearer each year by
input-heat-delivered = Heat in the water drawn
input-heat-emission = Carbon dioxide of the house's heat, kg for each kWh
input-horizon = Years counted
input-installed = Installed price
input-installed-same = The same kind again, installed
input-interaction = Heating, cooling and drying of the house
input-label-factor = Uniform energy factor on the label
input-label-first-hour = First-hour rating on the label
input-made-up = Heat the house's heating makes up
input-maintenance = Upkeep
input-model-factor = Uniform energy factor of the model
input-new-life = Life of a new heater
input-peak-share = Of which at peak hours
input-people = People
input-price-electricity = Price of electricity
input-price-fuel = Price of the fuel
input-price-fuel-kwh = The same for each kWh
input-price-low = Price at the other hours
input-price-mean = Mean price for this heater
input-price-peak = Price at peak hours
input-rebate = Rebates
input-room-winter = Room in winter
input-running = Running cost of this heater
input-running-keep = Running cost of the one you have
input-setpoint = Thermostat
input-shower-flow = Flow of the shower head
input-shower-time = Length of a shower
input-showers-in-a-row = Showers one after another
input-spent = Spent on this heater by then
input-spent-keep = Spent on keeping the old one by then
input-upfront = Paid at the start
input-work = Work the house needs
input-years-left = Years it may go on
working-no-payback = Not within these years

# Sources.
source-simulation = Our own simulation. Cold water and daily use follow the Building America House Simulation Protocols. The heater is set so that it scores its label in the federal rating test.
source-rating-test = US federal rating test for water heaters, 10 CFR 430, subpart B, appendix E.
source-prices = Your answers. Prices nobody gave are rough means from memory: take them from your bill and your quotes.
source-present-value = Present value as in any textbook of engineering economics. Lives of tanks: common practice, no published source.
source-payback = Money spent, year by year, without discounting.
source-emission = Fuels: factors of the US Environmental Protection Agency. Grid: state means. Both from memory.

# Names of the figures that stand beside a verdict.
figure-energy = Energy in a year
figure-running = Cost of running it, first year
figure-saved = Saved in the first year
figure-payback = Time until it has paid for itself
figure-upfront = Paid at the start
figure-net-present-cost = Cost over all the years, in today's money
figure-first-hour = Hot water in the first hour
figure-morning = Cool water on the busiest morning
figure-emission = Carbon dioxide in a year
