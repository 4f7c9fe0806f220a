# The label, and the heater that scores it in the rating test.

label-factor-out-of-reach = The label says a uniform energy factor of { $label }. The model of this heater reaches { $model }.
label-first-hour-out-of-reach = The label says a first-hour rating of { $label }. The model of this heater reaches { $model }.

# Rows of the table: label against model.
label-figure-factor = Uniform energy factor
label-figure-first-hour = First-hour rating
label-figure-pattern = Draw pattern
label-figure-year = Energy a year
label-figure-recovery = Recovery efficiency
label-figure-standby = Standby loss
label-pattern-very-small = Very small: 10 gallons a day
label-pattern-low = Low: 38 gallons a day
label-pattern-medium = Medium: 55 gallons a day
label-pattern-high = High: 84 gallons a day

# Rows of the table: what the model is made of.
label-parameter-volume = Water in the tank
label-parameter-standby = Heat lost while it stands
label-parameter-stirred = Part of the tank stirred by cold water
label-parameter-element = Power of each element
label-parameter-input = Power of the burner
label-parameter-burner = Share of the fuel that heats the water
label-parameter-effectiveness = Heat pump, as a share of the best that nature allows
label-parameter-output = Heat from the heat pump
