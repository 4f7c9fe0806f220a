# Prices and how money is counted.

q-price-electricity = What do you pay for electricity?
    .find = Take it from your bill: the total to pay, divided by the kilowatt-hours (kWh) used.
    .default = The mean price of your state or province, from memory. Your bill is better.
q-installed-same = What would the same kind of heater cost, put in?
    .find = Ask for a quote with the heater, the work, the permit and taking the old one away.
    .default = A round figure for an ordinary job in 2025, from memory. Ask for a quote.
q-installed-heat-pump = What would a 50 gal heat pump tank cost, put in?
    .find = Ask for a quote with the heater, the work and the permit, before any rebate.
    .default = A round figure for an ordinary job in 2025, from memory. Ask for a quote.
q-rebate = Which rebates or credits can you get for a heat pump tank?
    .find = Ask your power company, your state or province, and your installer. Add up what you are sure to get.
    .default = Rebate rules change, so none are built in.
