# Work that findings ask for, with its sizes.

work-bonding = Have a bonding wire put across the hot and cold pipes.
work-breaker = Have the breaker changed for one of { $breaker }.
work-burner-air = Have two openings made for the burners' air, { $area } each.
work-cap-fuel = Have the fuel line capped by a licensed trade.
work-carry-upright = Stand the tank up where there is { $needs } of height, and walk it in upright.
work-condensate-pipe = Run a 3/4 in pipe to the drain: { $run } long, with { $fall } of fall.
work-condensate-pump = Put in a condensate pump that lifts { $lift } over { $run }, with a switch that stops the heater if the pump fails.
work-disconnect = Have a switch put in beside the heater, or a lock on its breaker.
work-draught-test = Have a licensed trade test the draught of the burner that stays.
work-expansion-tank = Put in an expansion tank of { $size }, with its air set to { $precharge }.
work-floor-support = Have the floor made fit for { $mass }: ask a builder.
work-frost-guard = Cover or warm { $run } of pipe against frost.
work-fuel-connection = Have the fuel line connected with a new valve, a dirt trap and a test for leaks.
work-joints = Put in { $count } lined (dielectric) joints at the tank.
work-loop-control = Put the pump on a button or a timer, and cover { $length } of pipe.
work-louvred-door = Put in a slatted (louvred) door, or grilles high and low.
work-make-way = Clear the way so that it is { $needs } wide: take the door out, or move what stands there.
work-mixing-valve = Put in a mixing valve at the tank, set to { $mixed }.
work-new-circuit = Have a new 240 V circuit put in: a { $breaker } double breaker and { $run } of size { $wire } copper cable.
work-new-outlet = Have a 120 V outlet on a circuit of its own put in.
work-pan = Put a pan { $diameter } wide under the tank, with a 3/4 in drain.
work-panel-space = Have room made in the panel.
work-precharge = Set the air of the expansion tank to { $precharge }, with the water off and a tap open.
work-pressure-valve = Put in a pressure-reducing valve, set to { $pressure }.
work-quieten = Put rubber feet under it and make the wall or door tighter: it is { $level } next door.
work-relief-pipe = Run a new pipe from the relief valve: { $length } long, ending { $end } above the floor.
work-resize-flue = Have the flue checked, and lined for the appliance that stays.
work-service = Have the service looked at: it is { $service } and the house counts as { $load }. A device that lets large loads take turns may do.
work-setpoint = Set the thermostat to { $setting } at least.
work-shutoff = Put in { $count } new shutoff valve while the water is off.
work-stand = Put it on a stand { $height } high, with a post before it if cars can reach it.
work-straps = Put on { $count } straps, in the upper and lower third.
work-vacuum-relief = Put in a vacuum relief valve on the cold pipe.
work-wires = Have { $run } of new size { $wire } copper cable put in.

# The list of findings on the page.
page-findings = Does it fit? { $heater }
page-findings-about = What the usual rules ask, and what you told us. Local code and licensed trades decide.
page-findings-none = Nothing changes here, so there is nothing to check.
page-findings-cost = (about { $amount })
page-findings-rule = The rule and the figures
page-findings-work = Work:
page-findings-maybe = This may be needed:
page-findings-heater = Heater
page-findings-measure = Measure it, or tell what you know
page-findings-source = Rule:
sketch-stand-up = Going up, the tank stands on its edge for a moment. Its diagonal must pass under the ceiling.
sketch-headroom = The tank and the pipes above it must fit under the lowest thing overhead.
sketch-drain-slope = The water runs downhill in a pipe to the drain.
sketch-drain-pump = The water falls into a small pump. The pump lifts it up and over to the drain.
sketch-circuit = From the panel to the switch to the heater. The breaker, the wires and the heater must match.
sketch-relief = The pipe from the relief valve runs down, full size, and ends open near the floor.

# The way to the day of the work.
work-link = What to load, and the work
