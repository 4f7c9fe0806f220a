# The usual cautions.

caution-mains = Live power can kill. Switch the breaker off and lock it. Then prove with a tester that the wires are dead. Wiring is work for a licensed electrician.
caution-lifting = A tank is heavy and hard to hold. Empty it first, and carry it with two people and straps.
caution-drain-hot = The water in a tank can burn. Let it cool before you drain it, and lead the hose to a safe place.
caution-fuel = Gas and oil can burn, explode or poison. Only a licensed trade may shut off, cap or change a fuel line or a flue.
caution-leak = Water on the floor and live power do not mix. Switch the heater's breaker off before you step into a puddle. Shut the gas off at a burner. Then shut the cold water valve above the tank.
caution-scald = Hot water burns skin. At 120 °F (49 °C) it takes a few minutes, for children less. Test a bath with your hand.
caution-scald-fast = At this setting tap water burns skin within seconds. A mixing valve at the tank makes it safe: it adds cold water.
caution-legionella = Germs called Legionella grow in warm water. Store at 140 °F (60 °C) with a mixing valve if somebody in the house is old or ill. Ask your doctor or your plumber.
caution-local-code = Here stands what the published rules ask and what you entered. Nothing here is a permit. Local code and licensed trades decide.
caution-fumes = Fumes can kill, and you cannot smell them. Have an alarm for carbon monoxide. Only a licensed trade may test or change a burner.
caution-pressure = A tank under pressure can burst. Never close off, plug or screw shut a relief valve.
caution-relief = The relief valve lets out boiling water. Keep away from its pipe, and never plug it.
caution-water-off = Shut the water off and open a tap before a pipe is opened. Water in the tank can burn.
caution-fire = A torch sets walls on fire. Lay a fire cloth, keep an extinguisher at hand, and look again after half an hour.
