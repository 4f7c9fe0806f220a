# The advice: verdict, reasons, runners-up, what to settle first.
# `$heater` is a heater's name.

verdict-keep = Keep the heater you have for now. At its age it may last about { $years } more.
verdict-heat-pump = Best choice: { $heater }. Over { $years } it costs about { $saves } less than to keep the heater you have.
verdict-heat-pump-dearer = The best that will do the job: { $heater }. Over { $years } it costs about { $saves } more than to keep the heater you have.
verdict-same = Best choice: { $heater }. Over { $years } it costs about { $saves } less than to keep the heater you have.
verdict-same-dearer = The best that will do the job: { $heater }. Over { $years } it costs about { $saves } more than to keep the heater you have.
verdict-nothing-fits = Nothing on the list fits as things stand. See below what each heater would need.

reason-money-keep = It costs about { $cost } a year to run. No other choice is clearly cheaper over the years counted.
reason-money-keep-serves = It costs about { $cost } a year to run. What is cheaper is not so by much, does not fit, or gives too little hot water.
reason-money-payback = It costs about { $after } a year to run, and the one you have about { $before }. It has paid for itself after { $payback }.
reason-money-saves = It costs about { $after } a year to run, and the one you have about { $before }. That saves { $saved } a year, but it does not pay back the { $upfront } within { $horizon }.
reason-money-dearer = It costs about { $after } a year to run, and the one you have about { $before }. That is { $saved } more each year.

reason-water-carries = The hot water lasts through your busiest morning. Its first-hour rating is { $first-hour }: what a full, hot tank gives in one busy hour.
reason-water-better = The hot water lasts through your busiest morning. With the heater you have it does not.
reason-water-short = On your busiest morning, about { $short } of the { $asked } you ask for comes out too cool.

reason-leaks = The old tank leaks. A leak in a tank only grows, so it cannot stay.
reason-life-keep = It is { $age } old. The chance that it fails within a year is about { $chance }.
reason-life-old = The old heater is { $age } old. The chance that it fails within a year is about { $chance }. It is easier to change it before it fails.
reason-fits = It fits where the old one stands, by what was entered.
reason-fits-with-work = It fits after some work of about { $work }. That is counted in the costs.
reason-measure-first = It may well fit. A few things must be measured first.

need-hot-water = On your busiest morning about { $short } would come out too cool.
need-hot-water-year = Over a year, taps and showers would run too cool for about { $minutes } a day.
need-costs-more = Over the years counted it costs about { $extra } more.
need-costs-less = Over the years counted it would cost about { $extra } less.

settle-quote = Get a written price for a heat pump tank with all the work.
settle-permit = Ask your town which permit the work needs and who may do it.
