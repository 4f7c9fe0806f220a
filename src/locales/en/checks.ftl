# Checks: names and what they find.

check-tank-state = The old tank
check-tank-state-leaks = There is water under the tank. A leaking tank cannot be mended.

check-headroom = Height
check-headroom-fits = The tank and its pipes need { $needs } of height. There is { $has }.
check-headroom-measure = The tank and its pipes need { $needs } of height. Measure how much there is. { $has } is only a guess.
check-headroom-short = The tank and its pipes need { $needs } of height. There is only { $has }.

check-way-in = The way in
check-way-in-fits = The tank needs a way { $needs } wide. The narrowest place is { $has }. It weighs { $weight } empty.
check-way-in-door = The tank needs a way { $needs } wide. The door is { $has }. It will go through with the door taken out.
check-way-in-measure = The tank needs a way { $needs } wide. Measure the narrowest door and turn. { $has } is only a guess.
check-way-in-narrow = The tank needs a way { $needs } wide. The narrowest place is only { $has }.

check-air-temperature = Cold air
check-air-temperature-fits = The room falls to { $coldest } in the coldest hour. The heat pump can work in that.
check-air-temperature-locked-out = The room falls to { $coldest }. In about { $hours } hours of the year it is too cold for the heat pump, and the elements take over.
check-air-temperature-too-cold = The room falls to { $coldest }. In about { $hours } hours of the year it is too cold for the heat pump. That is more than half the year.
check-air-temperature-pipes = The room falls to { $coldest } in the coldest hour. Pipes could freeze. Measure how cold it gets in winter.

check-footprint = Floor space
check-footprint-fits = The tank needs { $needs } of floor each way. There is { $has }.
check-footprint-measure = The tank needs { $needs } of floor each way. Measure the free floor. { $has } is only a guess.
check-footprint-short = The tank needs { $needs } of floor each way. There is only { $has }.

check-stand-up = Standing it up
check-stand-up-fits = From lying to standing the tank sweeps { $needs } of height. There is { $has }.
check-stand-up-upright = From lying to standing the tank sweeps { $needs } of height. There is only { $has }. It must come in upright.
check-stand-up-measure = From lying to standing the tank sweeps { $needs } of height. Measure the highest ceiling near it. { $has } is only a guess.
check-stand-up-short = The tank is taller than the room, which is { $has } high.

check-service-space = Room to work
check-service-space-fits = The rule asks for { $needs } of free floor in front. There is { $has }. The filter and the controls can be reached.
check-service-space-short = The rule asks for { $needs } of free floor in front, to reach the filter and the controls. There is { $has }.
check-service-space-measure = The rule asks for { $needs } of free floor in front. Measure it. { $has } is only a guess.

check-floor = Weight on the floor
check-floor-fits = Full of water the tank weighs { $full }. The floor carries that.
check-floor-heavy = Full of water the tank weighs { $full }. Wooden joists like these are built for about { $carries } in one spot.
check-floor-measure = Full of water the tank weighs { $full }. Look what it stands on. Concrete carries it, wooden joists are built for about { $carries } in one spot.

check-circuit = Circuit
check-circuit-fits = It needs a { $needs } double breaker or the next size up. There is one of { $has }.
check-circuit-likely = It needs a { $needs } double breaker or the next size up. Read the one you have. { $has } is only a guess.
check-circuit-find = It needs a double breaker of { $needs } or the next size up. Look whether there is one.
check-circuit-small = It needs a double breaker of { $needs } and wires to match. There is one of { $has }.
check-circuit-none = It needs a double breaker of { $needs } and wires to match. There is none for a heater yet.
check-circuit-only-120 = It needs 240 V. There is only a 120 V outlet.

check-panel = Panel and service
check-panel-fits = With the new heater the house counts as { $load }. The service is made for { $service }, and the panel has room.
check-panel-full = With the new heater the house counts as { $load }. The service is made for { $service }. Free double spaces: { $spaces }.
check-panel-measure = With the new heater the house counts as about { $load }. Read the number on the main breaker, and count free spaces. { $service } and { $spaces } may be guesses.

check-outlet = 120 V outlet
check-outlet-fits = It plugs into a 120 V outlet on a circuit of its own. There is one.
check-outlet-shared = It draws { $amps } at the most. On a circuit with other outlets it may take { $most }. The outlet that is there will do.
check-outlet-too-much = It draws { $amps } at the most. On a circuit with other outlets it may take only { $most }.
check-outlet-look = It plugs into a 120 V outlet, best on a circuit of its own. Look whether there is one near.
check-outlet-missing = It plugs into a 120 V outlet on a circuit of its own. There is none near.

check-conductor = Wires
check-conductor-fits = The heater needs { $load } from its wires. Size { $wire } carries { $carries }, and suits the { $breaker } breaker.
check-conductor-small = The heater needs { $load } from its wires, and the breaker is { $breaker }. Size { $wire } carries { $carries }. They do not match.
check-conductor-measure = The heater needs { $load } from its wires. Read their size on the cable. Size { $wire } is only a guess. It would carry { $carries } and suit a { $breaker } breaker.

check-ground-wire = Ground wire
check-ground-wire-fits = Two hot wires and a ground are there. That is what it needs.
check-ground-wire-neutral = Two hot wires, a neutral and a ground are there. The neutral is spare at 240 V.
check-ground-wire-look = It needs two hot wires and a ground. Have an electrician look which are there.
check-ground-wire-missing = There is no ground wire. The cable must be replaced.

check-overcurrent = Breaker not too large
check-overcurrent-fits = A breaker for this heater may be { $most } at the most. This one is { $has }.
check-overcurrent-large = A breaker for this heater may be { $most } at the most. This one is { $has }: it would not trip in time.

check-supply = 208 V supply
check-supply-208 = At 208 V an element made for { $rated } gives only { $gives }. It heats up again more slowly.

check-voltage-drop = Length of the run
check-voltage-drop-fits = On the way from the panel { $lost } of the voltage is lost. Up to { $most } is advised.
check-voltage-drop-long = On the way from the panel { $lost } of the voltage is lost. No more than { $most } is advised.
check-voltage-drop-measure = On the way from the panel about { $lost } of the voltage is lost. No more than { $most } is advised. Measure the run.

check-disconnect = Switch in sight
check-disconnect-fits = The heater can be switched off in sight of it, or its breaker can be locked.
check-disconnect-missing = Nothing in sight switches the heater off, and its breaker cannot be locked.
check-disconnect-look = It must be possible to switch the heater off in sight of it, or to lock its breaker. Look whether it is.

check-air-volume = Air in the room
check-air-volume-fits = The heat pump needs { $needs } of air around it. There is { $has }.
check-air-volume-open = The heat pump needs { $needs } of air around it. The room has { $has }, but it opens to the next room.
check-air-volume-ducts = The heat pump needs { $needs } of air around it. The room has { $has }, but ducts bring more.
check-air-volume-measure = The heat pump needs { $needs } of air around it. Measure the room. { $has } is only a guess.
check-air-volume-small = The heat pump needs { $needs } of air around it. The room has { $has } and a closed door.

check-burner-air = Air for burners
check-burner-air-none = No burner draws air from this room any more. Openings that were made for one can be closed.
check-burner-air-fits = The burners in this room need { $needs } of air. There is { $has }.
check-burner-air-measure = The burners in this room need { $needs } of air. Measure the room, and look which burners draw on it. { $has } may be a guess.
check-burner-air-small = The burners in this room need { $needs } of air. The room has { $has } and a closed door.

check-draught = Fumes
check-draught-none = No other burner takes its air from this room.
check-draught-look = Look whether a furnace or boiler here takes its air from the room. A heat pump cools that air, and a fan may pull fumes back in.
check-draught-test = A furnace or boiler takes its air from this room. Its draught must be tested with everything running.
check-draught-blown = Ducts would blow air out of a room with an open burner. Its fumes could be pulled into the house.

check-drain = Drain
check-drain-gravity = The heat pump makes up to { $day } of condensate (water from the air) a day, { $year } a year. It can run off by itself. The pipe needs { $fall } of fall over { $run }.
check-drain-likely = The heat pump makes up to { $day } of condensate (water from the air) a day. It may run off by itself. Look where the drain is, and how high.
check-drain-lift = The heat pump makes up to { $day } of condensate (water from the air) a day. Measure how high a pump must lift it. { $rise } is only a guess.
check-drain-pump = The heat pump makes up to { $day } of condensate (water from the air) a day. The drain is too high for it to run off by itself.
check-drain-none = The heat pump makes up to { $day } of condensate (water from the air) a day. There is no drain near. A pump can lift it { $rise }.
check-drain-too-high = The heat pump makes up to { $day } of condensate (water from the air) a day. A small pump cannot lift it { $rise }.

check-drain-frost = Frost on the drain
check-drain-frost-fits = The way to the drain stays free of frost.
check-drain-frost-look = Look whether part of the way to the drain gets below freezing in winter. Ice would stop the water.
check-drain-frost-guard = Part of the way to the drain freezes. Ice would stop the water.

check-noise = Noise next door
check-noise-none = No quiet room is next to it.
check-noise-fits = In the next room it makes { $level }. For sleep { $most } or less is advised.
check-noise-measure = If a bedroom is next to it, it makes about { $level } there. For sleep { $most } or less is advised. Tell what lies between.
check-noise-loud = In the next room it makes { $level }. For sleep { $most } or less is advised.

check-flue = Flue
check-flue-alone = Nothing else uses the old flue. Its opening must be closed.
check-flue-maybe = The old flue may be shared with a furnace or boiler. Find out first. It may then be too wide for the one that stays.
check-flue-shared = A furnace or boiler keeps the flue to itself. It may then be too wide for it.

check-fuel-line = Fuel line
check-fuel-line-cap = The fuel line is no longer used. It must be closed.
check-fuel-line-connect = The burner needs a shutoff valve near it, a trap for dirt, and a test for leaks.

check-garage = In a garage
check-garage-stand = What can spark stands { $height } above a garage floor, out of the way of cars. Some labels say that it may stand lower.

check-pressure = Water pressure
check-pressure-fits = The pressure is { $has }. The rule allows { $most }.
check-pressure-high = The pressure is { $has }. The rule allows { $most } at the most.
check-pressure-measure = The rule allows { $most } of pressure. Screw a gauge onto a tap and read it. { $has } is only a guess.

check-expansion = Expansion
check-expansion-open = Water that grows when it is heated ({ $growth }) can go back into the street's pipe.
check-expansion-fits = The water grows by { $growth } when it is heated. The expansion tank takes that up.
check-expansion-look = The water grows by { $growth } when it is heated. Look whether a valve keeps it from going back, and whether an expansion tank is there.
check-expansion-charge = The expansion tank is large enough, but its air must be set to { $precharge }.
check-expansion-small = The water grows by { $growth } when it is heated. The expansion tank should hold { $size } at least.
check-expansion-missing = The water grows by { $growth } when it is heated, and cannot go back. It needs an expansion tank of { $size } at least.

check-relief = Relief valve pipe
check-relief-fits = The relief valve's pipe runs down, open and in sight. It should end no more than { $end } above the floor.
check-relief-look = Look at the pipe on the relief valve. It must run downhill at full size, open and in sight, and end no more than { $end } above the floor.
check-relief-missing = The relief valve has no pipe. Boiling water could spray out. It must end no more than { $end } above the floor.
check-relief-wrong = The relief valve's pipe is not as it must be: downhill at full size, open and in sight, and ending no more than { $end } above the floor.

check-pan = Drain pan
check-pan-none = A leak would do no great harm here, so no pan is asked for.
check-pan-fits = A pan with a drain is there.
check-pan-look = Where a leak would do harm, a pan with a drain must be under the tank. Look what is below, and what is there.
check-pan-missing = A leak would do harm here. The tank needs a pan with a drain under it.

check-vacuum = Vacuum relief
check-vacuum-none = No taps lie lower than the tank.
check-vacuum-look = If taps lie lower than the tank, it can be sucked empty. Find out whether any do.
check-vacuum-needed = Taps lie lower than the tank. It could be sucked empty when the street's water is off.

check-straps = Earthquake straps
check-straps-none = Strong earthquakes are rare here.
check-straps-look = In a townhouse here, the tank must be strapped to the wall. Tell which kind of house it is.
check-straps-needed = The tank must be strapped to the wall, in its upper and lower third.

check-scald = Burns
check-scald-fits = Water of { $stored } burns grown-up skin in about { $seconds } seconds. Children burn sooner.
check-scald-mixed = A mixing valve sends out water of about { $safe }. Water of { $stored } would burn in { $seconds } seconds.
check-scald-look = Water of { $stored } burns skin in about { $seconds } seconds. Look whether a mixing valve cools it to { $safe }.
check-scald-hot = Water of { $stored } burns skin in about { $seconds } seconds. A mixing valve must cool it to { $safe }.

check-storage = Germs in the tank
check-storage-hot = At { $stored } the germs called Legionella die. The advice is { $advised }.
check-storage-cool = At { $stored } the germs called Legionella do not grow, but live on. For people who are old or ill the advice is { $advised }, with a mixing valve.
check-storage-grows = At { $stored } the germs called Legionella grow. The advice is { $advised }, with a mixing valve.

check-hotter = More from the same tank
check-hotter-could = Stored at { $hot } and mixed down to { $mixed }, the tank gives { $more } more hot water: { $litres }. It loses more heat, and a heat pump works harder.
check-hotter-now = It stores at { $hot } and mixes down to { $mixed }. So it gives { $more } more hot water: { $litres }.

check-shutoff = Shutoff valve
check-shutoff-fits = The valve above the heater still closes. New ones and unions are put in while the water is off.
check-shutoff-look = Try whether the valve above the heater still closes.
check-shutoff-stuck = The valve above the heater no longer closes. The water must be shut off for the whole house.

check-joints = Pipe joints
check-joints-look = Look what the pipes are made of. Copper on a steel tank rusts it without the right joints.
check-joints-plastic = Plastic pipes need no special joints against rust.
check-joints-steel = Steel pipes that meet copper rust. Joints of brass, or with a lining, keep them apart.
check-joints-copper = Copper on a steel tank rusts it. Lined joints keep them apart. Never solder on the tank's own pipes.

check-bonding = Bonding wire
check-bonding-none = Plastic pipes carry no current, so no wire is needed across the tank.
check-bonding-look = Look what the pipes are made of. Metal pipes need a wire across the tank.
check-bonding-wire = Metal pipes must stay joined by a wire when the tank between them is changed.

check-recirculation = Hot water loop
check-recirculation-timed = The loop loses { $heat } of heat a year. That costs about { $cost } a year.
check-recirculation-always = The loop runs day and night and loses { $heat } of heat a year. That costs about { $cost } a year.

check-hardness = Hard water
check-hardness-fits = The water has { $hard } of hardness. That is no special trouble.
check-hardness-burner = The water has { $hard } of hardness. Lime on the bottom shortens a burner tank's life. Flush it once a year.
check-hardness-element = The water has { $hard } of hardness. Lime grows on the elements. Flush the tank once a year.

# What would let a heater in that does not fit.
need-lower-heater = One no taller than { $most } would fit, or one in a higher room.
need-narrower-heater = One no wider than { $most } would fit, or another way in.
need-nearer-drain = A drain no more than { $most } above the heater would do, or a larger pump.
need-new-tank = Only a new tank helps.
need-sealed-burner = It would do with ducts from and to indoors, or with a burner that has its own air pipe.
need-warmer-room = It would do in a warmer room, or with air from a warmer room.
