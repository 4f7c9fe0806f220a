# Climate and cold water.

q-place = Which listed place is nearest in weather?
    .find = Choose the town nearest to you at about the same height above the sea.
    .default = Its weather and prices lie near the middle of the country (from memory).
q-outdoor-mean = How warm is it outside over the whole year?
    .find = A weather site shows the mean of all 12 months for your town.
    .default = From the place you chose.
q-outdoor-range = How far apart are the warmest and the coldest month?
    .find = Take the mean of the warmest month and take off the mean of the coldest month.
    .default = From the place you chose.
q-cold-tap = How warm is your cold tap water over the year?
    .find = Run the cold tap for two minutes and hold a thermometer in it. Do it in spring or fall: then it is near the mean of the year.
    .default = From the weather outside, by a published relation (Building America House Simulation Protocols, from memory).
