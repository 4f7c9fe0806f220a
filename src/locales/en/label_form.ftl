# The drawn label: where each figure usually stands.

label-tag = The energy label
    .where = A large paper sticker on the front. On an old tank it may be gone.
label-plate = The nameplate
    .where = A small plate or sticker, low down on the side. Use a light, and leave all covers shut.
label-conditions = The figures on a label come from a test with the thermostat at 125 °F (52 °C). So they hold for any house. What yours is set to is asked below.

spot-unreadable = I can’t read it
spot-year-refused = That year cannot be right. Please give a year from { $low } to { $high }.
spot-fuel = What it runs on
    .where = In the top line, beside the words “water heater”.
spot-factor = Uniform energy factor
    .where = Beside “UEF”. If it is not on the label, look on the nameplate or in the handbook. Labels from before 2017 say “EF”.
spot-scale = Which factor it is
    .where = The letters beside that number.
spot-first-hour = First-hour rating
    .where = Beside “first hour rating” or “capacity”. It is more than the tank holds, or close to it.
spot-volume = Rated volume
    .where = Beside “capacity”, “cap.” or “volume”.
spot-input = Heating power
    .where = Beside “watts” or “input”. If it has two elements, take one of them.
spot-made = Year made
    .where = Beside “date”, or in the first four figures of the serial number.
