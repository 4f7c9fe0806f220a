# Climate and cold water.

q-place = Which listed place is nearest in weather?
    .find = Choose the town nearest to you at about the same height above the sea.
    .default = Its weather and prices lie near the middle of the country (from memory).
