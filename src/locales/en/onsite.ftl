# On site: measuring in large letters.

onsite-heading = What to measure
onsite-about = What can change the answer most comes first.
onsite-caution = Leave covers on and stay clear of live parts. Power, gas, hot water and flues are for licensed trades.
onsite-rest = { $count ->
    [one] One thing more, which matters less
   *[other] { $count } things more, which matter less
}
onsite-measured = Measured: { $count }
onsite-begin = Start measuring
onsite-leave = Leave
onsite-list = List
onsite-left = { $count ->
    [0] This is the last one.
    [one] 1 more after this.
   *[other] { $count } more after this.
}
onsite-wake = Keep the screen on
onsite-wake-on = The screen stays on while this page is in sight.
onsite-wake-refused = The device does not keep the screen on. It may be low on power.
onsite-no-wake = This browser cannot keep the screen on. Set a longer time in the settings of the device.
onsite-button = Measure on site

tape-feet = Feet
tape-inches = Inches
tape-quarter = And 1/4 of an inch
tape-half = And 1/2 of an inch
tape-three-quarters = And 3/4 of an inch
tape-refused = Please write it as the tape has it, such as 7 and 6 1/2.

# The way to what comes after the work
job-after = Start-up, handover and after
