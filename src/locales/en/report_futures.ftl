# Futures and what would change the advice, as plain text.

report-futures = How sure it is, by { $count } futures of this house
report-future = { $heater }: all costs { $low } to { $high } in eight of ten. Costs least in { $chance } of them. The busiest morning runs cold in { $cold }.
report-changes = What would change it: { $advised } against { $next }
report-change = Makes { $share } of the doubt.
report-change-turns = A likely answer turns the advice to: { $heater }.
report-change-option = If the answer is "{ $option }", this would be the better choice: { $heater }.
report-change-place = If you live near { $place }, { $region }, this would be the better choice: { $heater }.
report-change-even = Both cost the same at { $value }: below it take { $below }, above it { $above }.
report-future-lives = How long tanks last
report-future-prices = Where prices go
report-future-household = Who moves out or in
report-future-weather = The weather of the years
