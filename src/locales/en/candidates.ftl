# The heaters that are compared. `.about` says what each one is.

candidate-keep = Keep the heater you have
    .about = Use the present heater until it fails. Then put in the same kind again.
candidate-electric-tank = New electric tank
    .about = A tank heated by two electric elements, like large kettle coils.
candidate-gas-tank = New gas tank
    .about = A tank with a natural gas burner under it and a flue up the middle.
candidate-propane-tank = New propane tank
    .about = A tank with a propane burner under it and a flue up the middle.
candidate-oil-tank = New oil tank
    .about = A tank with an oil burner and a flue.
candidate-heat-pump-40 = Heat pump tank, 40 gal
    .about = A 40 gal tank. A heat pump on top moves heat from the room into the water. Elements help when it is busy. It needs 240 V.
candidate-heat-pump-50 = Heat pump tank, 50 gal
    .about = A 50 gal tank. A heat pump on top moves heat from the room into the water. Elements help when it is busy. It needs 240 V.
candidate-heat-pump-65 = Heat pump tank, 65 gal
    .about = A 65 gal tank. A heat pump on top moves heat from the room into the water. Elements help when it is busy. It needs 240 V.
candidate-heat-pump-80 = Heat pump tank, 80 gal
    .about = An 80 gal tank. A heat pump on top moves heat from the room into the water. Elements help when it is busy. It needs 240 V.
candidate-plug-in-50 = Plug-in heat pump tank, 50 gal
    .about = A 50 gal heat pump tank for a 120 V outlet. It has no large elements, so it warms up more slowly.

# Heaters of an installer's offer: by the name they have there, or by their place in it.
candidate-offered = { $name }
candidate-offer-1 = Heater 1 of the offer
    .about = The first heater on your installer's list.
candidate-offer-2 = Heater 2 of the offer
    .about = The second heater on your installer's list.
candidate-offer-3 = Heater 3 of the offer
    .about = The third heater on your installer's list.
candidate-offer-4 = Heater 4 of the offer
    .about = The fourth heater on your installer's list.
candidate-offer-5 = Heater 5 of the offer
    .about = The fifth heater on your installer's list.
candidate-offer-6 = Heater 6 of the offer
    .about = The sixth heater on your installer's list.
