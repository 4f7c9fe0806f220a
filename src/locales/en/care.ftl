# What a heater asks for through the years.

care-by-fuel = a licensed fuel trade
care-by-household = you
care-by-plumber = a licensed plumber

care-anode = Have the anode looked at
care-anode-how = The anode rusts so that the tank does not. Have it changed when half of it is gone. The first look is after three years, then every two.
care-anode-how-hard = Your water is hard ({ $hard }): it eats the anode sooner. Have it looked at every two years, and changed when half of it is gone.
care-burner = Have burner and flue looked at
care-burner-how = Fumes can kill, and you cannot smell them. Keep an alarm for carbon monoxide.
care-condensate = Rinse the condensate line
care-condensate-how = Pour a cup of warm water with a little vinegar into the pan or the clean-out. See that it runs out at the other end.
care-condensate-pump = Test the condensate pump
care-condensate-pump-how = Pour water into the pump until it starts. Lift its float: the heater must stop. Rinse the slime out. Pull its plug first.
care-drips = Look for drips
care-drips-how = Look under the tank, at each joint and at the end of the relief pipe. All must be dry. A pan must be empty.
care-expansion = Have the expansion tank checked
care-expansion-how = Its air must match the water pressure. It is checked with the water off and a tap open.
care-filter = Clean the air filter
care-filter-how = Slide it out, wash it with warm water and let it dry. A dirty filter makes the heat pump work longer.
care-filter-how-dusty = Slide it out, wash it with warm water and let it dry. Lint and dust clog it sooner in this room.
care-flush = Flush the tank
care-flush-how = Switch the power off first. Lead a hose to a drain and let a bucket or two run out until it is clear. The water may burn. If the tap does not close again, call a plumber.
care-flush-how-hard = Your water is hard ({ $hard }), so lime settles fast. Switch the power off first. Lead a hose to a drain and let a bucket or two run out until it is clear. The water may burn.
care-flush-how-soft = Your water is soft ({ $hard }): every two years will do. Switch the power off first. Lead a hose to a drain and let a bucket or two run out. The water may burn.
care-loop = Look after the hot water pump
care-loop-how = See that its timer or button still works, and that the pipe covers are whole.
care-meter = Did it do what we said?
care-meter-how = Read the heater's own count or your meter, and enter it on the page "Did it do what we said?".
care-mixing-valve = Have the mixing valve checked
care-mixing-valve-how = Its heat is measured at the nearest tap, and its screens are rinsed.
care-relief = Have the relief valve tested
care-relief-how = It lets out boiling water, and an old one may not close again. So leave the test to a plumber. Never plug its pipe.

care-description = For { $who }. { $how }
care-every-months = { $months ->
    [one] every month
   *[other] every { $months } months
}
care-every-years = { $years ->
    [one] every year
   *[other] every { $years } years
}
care-once = once

care-download = Save the dates for your calendar
care-first = First
care-heading = What it asks for
care-often = Then
care-what = What
care-when = first on { $first }, then { $every }, by { $who }
care-who = Who
