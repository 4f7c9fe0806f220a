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

# When the model of a heater cannot quite do what its label says.
label-factor-out-of-reach = The label says a uniform energy factor of { $label }. The model of this heater reaches { $model }.
label-first-hour-out-of-reach = The label says a first-hour rating of { $label }. The model of this heater reaches { $model }.
