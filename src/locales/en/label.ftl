# The label, and the heater that scores it in the rating test.

# What does not add up.
label-factor-electric = No plain electric tank of { $volume } can score { $label }. With { $input } elements such a tank scores from { $low } to { $high }. Please check the figure.
label-factor-of-heat-pump = An electric tank of { $volume } cannot score { $label }. With { $input } elements it scores from { $low } to { $high }. Only a heat pump gives more heat than it uses. Is this one?
label-factor-heat-pump = No heat pump tank of { $volume } can score { $label }. With { $input } it scores from { $low } to { $high }. Please check the figure.
label-factor-burner = No tank of { $volume } with a burner of { $input } can score { $label }. It scores from { $low } to { $high }. Please check the figure.
label-first-hour-contradicts = A first-hour rating of { $label } does not go with a tank of { $volume } and { $input }. The nearest such tank gives { $model }. They give from { $low } to { $high }. One of the figures may be wrong.
label-first-hour-between = A first-hour rating of { $label } does not go with a tank of { $volume } and { $input }. The test counts whole draws. Such tanks give up to { $low }, or from { $high } on, and the nearest gives { $model }. One of the figures may be wrong.
label-unusable = { $figure }: { $given } cannot be right. It must be from { $low } to { $high }.

# An old label, and a row of the table in plain text.
label-converted = The label's energy factor of { $old } is from the old test. On the new scale it is about { $factor }.
label-row = {"  "}{ $name }: label { $label } ({ $from }), model { $model }
label-from-read = as read
label-from-usual = usual for its kind
label-from-converted = from the old scale
label-from-worked-out = worked out

# Rows of the table: label against model.
label-figure-volume = Size of the tank
label-figure-input = Power of each element or the burner
label-figure-output = Heat from the heat pump
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
test-show = { $heater }: how it does in the rating test
