# What the household must know.

handover-installed = { $heater }, put in on { $date }.

handover-settings = How it is set
handover-normal = What is normal
handover-away = When you go away
handover-power-cut = When the power is off
handover-call = When to call
handover-cautions = Take care

handover-set = The water is set to { $set }.
handover-mode = Leave it in the mode that uses the heat pump first and the elements only when much hot water is wanted.
handover-mode-plug-in = It heats with the heat pump alone. A large tankful takes hours, so spread showers out.
handover-valve = A mixing valve at the tank cools the water to a safe heat before it goes to the taps.

handover-normal-hum = It hums like a fridge or a room fan, for some hours a day.
handover-normal-cool = It blows out cool, dry air. The room gets up to { $drop } cooler.
handover-normal-drips = Clear water drips to the drain: up to { $day } a day, about { $year } a year.
handover-normal-drips-pump = Clear water drips into a small pump: up to { $day } a day, about { $year } a year. The pump runs for a few seconds now and then.
handover-normal-slow = It heats slowly and for longer than your old one did. That is how it saves.
handover-normal-burner = The burner rushes while it burns. Some drops may hiss when the tank is cold.
handover-normal-ticks = It ticks a little while it heats.

handover-away-mode = Away for more than three days: set it to vacation, or lower the setting. Do not just pull the plug.
handover-away-low = Away for more than three days: set it to vacation or to its lowest setting.
handover-away-back = Back home: set it as before. Let each tap run hot for some minutes before you shower, so that no germs are left.
handover-away-frost = Where it may freeze, have the water shut off and the tank drained.

handover-power-pump = It cannot heat. The tank stays hot for a day or so. When power is back, it waits some minutes and starts by itself.
handover-power-plug-in = It cannot heat. The tank stays hot for a day or so. Check that its plug is in and the outlet has power.
handover-power-electric = It cannot heat. The tank stays hot for a day or so, and it starts again by itself.
handover-power-gas = Most gas heaters with a pilot go on heating. One with a fan or a spark cannot.
handover-power-oil = The burner cannot start. The tank stays hot for a day or so.
handover-power-empty = Never switch it on when the tank may be empty: the elements burn out at once.

handover-call-water = Water under the tank: switch its breaker off, shut the cold water valve above it, and call.
handover-call-relief = The relief valve drips or spits again and again. Keep away: the water is boiling hot.
handover-call-too-hot = The water is suddenly much hotter or colder than it was.
handover-call-noise = It grinds, rattles or buzzes loudly, or ice grows on it.
handover-call-code = It shows a fault, or stays in elements only by itself.
handover-call-gas = You smell gas: touch no switch, go out, and call the gas company from outside.
handover-call-fumes = The alarm for carbon monoxide sounds: go out and call for help from outside.
handover-call-trips = Its breaker trips. Do not just switch it on again.

handover-caution-hot = At { $set } tap water burns skin in seconds. Test a bath with your hand. Ask a plumber for a mixing valve.
handover-caution-hot-valve = The tank holds { $set }: that burns in seconds. The mixing valve makes it safe. Never turn it up without a thermometer.
handover-caution-raise = Water burns skin: at { $set } in minutes, a little hotter in seconds. Do not raise the setting without a mixing valve.
handover-caution-lower = Do not set it below 120 °F (49 °C) for long: germs called Legionella grow in lukewarm water. If somebody is old or ill, ask a doctor or plumber.
handover-caution-covers = Open no cover: behind it is live power that can kill. That is work for licensed trades.
handover-caution-relief = Never plug the relief valve or its pipe: a tank under pressure can burst.

handover-electricity = Electricity
handover-energy = What it should use
handover-energy-about = Worked out for your house. Your bill may differ by a quarter, as people use water differently.
handover-fuel = Fuel
handover-money = Cost
handover-month = Month
handover-year = Year
