# Checks: names, findings, work, rules.

check-tank-state = The old tank
check-tank-state-leaks = There is water under the tank. A leaking tank cannot be mended.

check-headroom = Height
check-headroom-fits = The tank and its pipes need { $needs } of height. There is { $has }.
check-headroom-measure = The tank and its pipes need { $needs } of height. Measure how much there is: { $has } was only assumed.
check-headroom-short = The tank and its pipes need { $needs } of height. There is only { $has }.

check-way-in = The way in
check-way-in-fits = The tank needs a way { $needs } wide. The narrowest place is { $has }. It weighs { $weight } empty.
check-way-in-measure = The tank needs a way { $needs } wide. Measure the narrowest door and turn: { $has } was only assumed.
check-way-in-narrow = The tank needs a way { $needs } wide. The narrowest place is only { $has }.

check-circuit = Circuit
check-circuit-fits = It needs a { $needs } breaker or the next size up. There is one of { $has }.
check-circuit-likely = It needs a { $needs } breaker or the next size up. Read the one you have: { $has } was only assumed.
check-circuit-small = It needs a double breaker of { $needs } and wires to match. There is one of { $has }.
check-circuit-only-120 = It needs 240 V. There is only a 120 V outlet.
check-circuit-no-space = It needs a double breaker of { $needs }. The panel has no free space for one.
check-circuit-outlet-fits = It plugs into a 120 V outlet on a circuit of its own. There is one.
check-circuit-outlet-missing = It plugs into a 120 V outlet on a circuit of its own. There is none near.

check-air-volume = Air in the room
check-air-volume-fits = The heat pump needs { $needs } of air around it. There is { $has }.
check-air-volume-open = The heat pump needs { $needs } of air around it. The room has { $has }, but it opens to the next room.
check-air-volume-measure = The heat pump needs { $needs } of air around it. Measure the room: { $has } was only assumed.
check-air-volume-small = The heat pump needs { $needs } of air around it. The room has { $has } and a closed door.

check-air-temperature = Cold air
check-air-temperature-fits = The room falls to { $coldest } in the coldest hour. The heat pump can work in that.
check-air-temperature-locked-out = The room falls to { $coldest }. In about { $hours } hours of the year it is too cold for the heat pump, and the elements take over.
check-air-temperature-too-cold = The room falls to { $coldest }. In about { $hours } hours of the year it is too cold for the heat pump. That is more than half the year.
check-air-temperature-pipes = The room falls to { $coldest } in the coldest hour. Pipes could freeze. Measure how cold it gets in winter.

check-drain = Drain
check-drain-gravity = The heat pump makes up to { $day } of condensate (water from the air) a day. It can run off by itself: the pipe needs { $fall } of fall over { $run }.
check-drain-likely = The heat pump makes up to { $day } of condensate (water from the air) a day. It can likely run off by itself. Look whether the drain is there: it was only assumed.
check-drain-pump = The heat pump makes up to { $day } of condensate (water from the air) a day. The drain is too high for it to run off by itself.
check-drain-none = The heat pump makes up to { $day } of condensate (water from the air) a day. There is no drain near.
check-drain-too-high = The heat pump makes up to { $day } of condensate (water from the air) a day. A small pump cannot lift it { $rise }.

check-flue = Flue and fuel line
check-flue-alone = The fuel line and the flue are no longer used. They must be closed.
check-flue-maybe = The old flue may be shared with a furnace or boiler. Find out first: it may then be too wide for the one that stays.
check-flue-shared = A furnace or boiler keeps the flue to itself. It may then be too wide for it.

work-cap-fuel = Have the fuel line capped and the flue opening closed by a licensed trade.
work-condensate-pump = Put in a condensate pump, with a switch that stops the heater if the pump fails.
work-louvred-door = Put in a slatted (louvred) door, or grilles high and low.
work-new-circuit = Have a new 240 V circuit with a { $breaker } double breaker put in.
work-new-outlet = Have a 120 V outlet on a circuit of its own put in.
work-panel-space = Have room made in the panel, and a new 240 V circuit put in.
work-resize-flue = Have the fuel line capped, and the flue checked and lined for the appliance that stays.

rule-common-practice = common practice, no source
rule-ifgc-5 = International Fuel Gas Code, chapter 5 (from memory)
rule-imc-307 = International Mechanical Code 307 (from memory)
rule-nameplate = the heater's own instructions decide; the room above it is common practice, no source
rule-nameplate-air = the heater's own instructions decide; the figure is typical of its class
rule-nec-210-23 = National Electrical Code 210.23 (from memory)
rule-nec-422-13 = National Electrical Code 422.13 and 240.6 (from memory)
rule-simulated-room = the simulated year of your room
