# Units. `$value` is the number as written, without its sign; `$n` is the number for the plural.
# `.sign` stands beside a field; `.name` is the unit in full.

# How numbers are written.
number-group = ,
number-decimal = .

# A gap that never breaks across lines.
-gap = {"\u00A0"}

unit-number = { $value }
    .sign = {""}
    .name = number
unit-percent = { $value }%
    .sign = %
    .name = percent
unit-degF = { $value }{ -gap }°F
    .sign = °F
    .name = degrees Fahrenheit
unit-degC = { $value }{ -gap }°C
    .sign = °C
    .name = degrees Celsius
unit-deltaF = { $value }{ -gap }°F
    .sign = °F
    .name = degrees Fahrenheit of difference
unit-K = { $value }{ -gap }°C
    .sign = °C
    .name = degrees Celsius of difference
unit-gal = { $value }{ -gap }gal
    .sign = gal
    .name = US gallons
unit-L = { $value }{ -gap }L
    .sign = L
    .name = litres
unit-ft3 = { $value }{ -gap }ft³
    .sign = ft³
    .name = cubic feet
unit-m3 = { $value }{ -gap }m³
    .sign = m³
    .name = cubic metres
unit-ft = { $value }{ -gap }ft
    .sign = ft
    .name = feet
unit-m = { $value }{ -gap }m
    .sign = m
    .name = metres
unit-in = { $value }{ -gap }in
    .sign = in
    .name = inches
unit-cm = { $value }{ -gap }cm
    .sign = cm
    .name = centimetres
unit-gpm = { $value }{ -gap }gpm
    .sign = gpm
    .name = US gallons a minute
unit-L-per-min = { $value }{ -gap }L/min
    .sign = L/min
    .name = litres a minute
unit-cfm = { $value }{ -gap }cfm
    .sign = cfm
    .name = cubic feet of air a minute
unit-m3-per-h = { $value }{ -gap }m³/h
    .sign = m³/h
    .name = cubic metres of air an hour
unit-W = { $value }{ -gap }W
    .sign = W
    .name = watts
unit-kW = { $value }{ -gap }kW
    .sign = kW
    .name = kilowatts
unit-Btu-per-h = { $value }{ -gap }Btu/h
    .sign = Btu/h
    .name = Btu an hour
unit-kWh = { $value }{ -gap }kWh
    .sign = kWh
    .name = kilowatt-hours
unit-therm = { $n ->
    [one] { $value }{ -gap }therm
   *[other] { $value }{ -gap }therms
}
    .sign = therms
    .name = therms
unit-W-per-K = { $value }{ -gap }W/°C
    .sign = W/°C
    .name = watts a degree Celsius
unit-Btu-per-h-per-degF = { $value }{ -gap }Btu/h/°F
    .sign = Btu/h/°F
    .name = Btu an hour a degree Fahrenheit
unit-min = { $value }{ -gap }min
    .sign = min
    .name = minutes
unit-year = { $n ->
    [one] { $value }{ -gap }year
   *[other] { $value }{ -gap }years
}
    .sign = years
    .name = years
unit-A = { $value }{ -gap }A
    .sign = A
    .name = amperes
unit-V = { $value }{ -gap }V
    .sign = V
    .name = volts
unit-psi = { $value }{ -gap }psi
    .sign = psi
    .name = pounds a square inch
unit-kPa = { $value }{ -gap }kPa
    .sign = kPa
    .name = kilopascals
unit-lb = { $value }{ -gap }lb
    .sign = lb
    .name = pounds
unit-kg = { $value }{ -gap }kg
    .sign = kg
    .name = kilograms
unit-gr-per-gal = { $value }{ -gap }gr/gal
    .sign = gr/gal
    .name = grains a US gallon
unit-mg-per-L = { $value }{ -gap }mg/L
    .sign = mg/L
    .name = milligrams a litre
unit-dollar = ${ $value }
    .sign = $
    .name = dollars
unit-dollar-per-kWh = ${ $value }/kWh
    .sign = $/kWh
    .name = dollars a kilowatt-hour
unit-dollar-per-therm = ${ $value }/therm
    .sign = $/therm
    .name = dollars a therm
unit-dollar-per-gal = ${ $value }/gal
    .sign = $/gal
    .name = dollars a US gallon
unit-dollar-per-L = ${ $value }/L
    .sign = $/L
    .name = dollars a litre
