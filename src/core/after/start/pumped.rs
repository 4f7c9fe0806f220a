//! What follows from the heat pump at work: the air it blows, the current it draws, what it drips, how it sounds.

use super::machine::moment;
use super::ranges::{CLAMP_SHARE, Expected, Span, Start, THERMOMETER_K, around, celsius, hull, within};
use super::{Reading, Taken};
use crate::core::checks::noise::{near_db, next_db};
use crate::core::message::{Arg, Message};
use crate::core::site::WallKind;
use crate::core::units::{Quantity, Unit, ZERO_C_K};

/// The power of a heat pump may differ from the calibrated model's by this share: labels fix the year, not the
/// moment. Common practice, no source.
const POWER_SHARE: f64 = 0.12;
/// The air's cooling likewise: airflow differs more between heaters than power does.
const COOLING_SHARE: f64 = 0.25;
/// Real over apparent power of a heat pump: plain motors and those with electronics; common practice, no source.
const POWER_FACTOR: [f64; 3] = [0.80, 0.93, 1.0];
/// Sound power of the class, dB(A), may be lower or higher by this, and a plain meter is off by as much again.
const SOUND_DB: f64 = 6.0;
/// Time that condensate is caught for where nobody said, s.
const CATCH_S: f64 = 600.0;
/// A coil that has just started is still getting wet for about this long, s; common practice, no source.
const WETTING_S: f64 = 1_800.0;

/// Steps over the air's temperatures.
const STEPS: u32 = 8;

/// Air in, water, and what follows from them.
pub(super) fn heat_pump(start: &Start, taken: &Taken, all: &mut Vec<Expected>) {
    let Some(pump) = start.model.pump() else { return };
    let (room, cold) = (start.air_c(), start.cold_c());
    let setpoint = start.setpoint_c();
    let air_in = taken.get(Reading::AirIn).map_or(room, |k| around(k - ZERO_C_K, THERMOMETER_K));
    let heating = [cold[0], 0.5 * (cold[1] + setpoint), setpoint + 2.0];
    let water = taken.get(Reading::Water).map_or(heating, |k| around(k - ZERO_C_K, THERMOMETER_K));
    let kelvin = |reading, [low, likely, high]: Span, reason| Expected {
        reading,
        low: low + ZERO_C_K,
        likely: likely + ZERO_C_K,
        high: high + ZERO_C_K,
        reason,
    };
    let of_room = Message::new("start-why-air-in").with("likely", celsius(room[1]));
    all.push(kelvin(Reading::AirIn, room, of_room));
    let of_tank =
        Message::new("start-why-water").with("cold", celsius(cold[1])).with("set", celsius(setpoint));
    all.push(kelvin(Reading::Water, heating, of_tank));
    sound(start, all);

    let at = |t: f64, w: f64, water: f64| moment(pump, start.model.idle_w, start.air(t, w), water);
    // Where the room is near the limit, the air that the heat pump still takes.
    let breathed = air_in.map(|t| within(t, pump.coldest_air_c, pump.warmest_air_c));
    if air_in[2] < pump.coldest_air_c || air_in[0] > pump.warmest_air_c {
        return;
    }
    let mut corners = Vec::new();
    // Between the corners too: dry air and cold air both take the condensate away.
    for step in 0..=STEPS {
        let t = breathed[0] + (breathed[2] - breathed[0]) * f64::from(step) / f64::from(STEPS);
        for w in start.humidity(t) {
            for water in water {
                corners.extend(at(t, w, water).map(|m| (t, m)));
            }
        }
    }
    let Some(likely) = at(breathed[1], start.humidity(breathed[1])[1], water[1]) else { return };
    let by = |m: Message| m.with("air", celsius(breathed[1])).with("water", celsius(water[1]));

    let cooled = hull(corners.iter().map(|(t, m)| t - m.air_out_c)).unwrap_or_default();
    let out = |t: f64, cooled: f64, share: f64, slack: f64| t - cooled * share + slack;
    // By the whole range of cooling at either end of the air that goes in.
    let low = out(breathed[0], cooled.1, 1.0 + COOLING_SHARE, -THERMOMETER_K);
    let high = out(breathed[2], cooled.0, 1.0 - COOLING_SHARE, THERMOMETER_K);
    let fall = Quantity::new(breathed[1] - likely.air_out_c, Unit::Kelvin);
    let reason = by(Message::new("start-why-air-out")).with("fall", fall);
    all.push(kelvin(Reading::AirOut, [low, likely.air_out_c, high], reason));

    let power = hull(corners.iter().map(|(_, m)| m.power_w)).unwrap_or_default();
    let v = start.volts(taken);
    let reason = by(Message::new("start-why-amps-pump")).quantity("watts", likely.power_w, Unit::Watt);
    all.push(Expected {
        reading: Reading::AmpsPump,
        low: power.0 * (1.0 - POWER_SHARE) / (v[2] * POWER_FACTOR[2]) * (1.0 - CLAMP_SHARE),
        likely: likely.power_w / (v[1] * POWER_FACTOR[1]),
        high: power.1 * (1.0 + POWER_SHARE) / (v[0] * POWER_FACTOR[0]) * (1.0 + CLAMP_SHARE),
        reason,
    });

    let time_s = taken.get(Reading::CondensateTime).unwrap_or(CATCH_S);
    let rate = hull(corners.iter().map(|(_, m)| m.condensate_m3_per_s)).unwrap_or_default();
    let likely_m3 = likely.condensate_m3_per_s * time_s;
    let id = if rate.0 > 0.0 {
        "start-why-condensate"
    } else if rate.1 > 0.0 {
        "start-why-condensate-maybe"
    } else {
        "start-why-condensate-dry"
    };
    let reason = by(Message::new(id))
        .quantity("time", time_s / 60.0, Unit::Minute)
        .with("likely", Arg::Number(likely_m3 * 1e6, 0));
    all.push(Expected {
        reading: Reading::Condensate,
        low: if time_s < WETTING_S { 0.0 } else { 0.4 * rate.0 * time_s },
        likely: likely_m3,
        // A dry coil may still drip a little of what the start left.
        high: 1.6 * rate.1 * time_s + 1e-5,
        reason,
    });
}

fn sound(start: &Start, all: &mut Vec<Expected>) {
    let power = start.fitted.candidate.body.sound_power_db;
    if power <= 0.0 {
        return;
    }
    let (site, volume) = (&start.fitted.case.site, start.fitted.case.site.volume_m3);
    // A larger room is quieter.
    let near = near_db(power, 1.0, volume.value);
    let reason = Message::new("start-why-sound-near").quantity("power", power, Unit::Decibel);
    all.push(Expected {
        reading: Reading::SoundNear,
        low: near_db(power, 1.0, volume.high) - SOUND_DB,
        likely: near,
        high: near_db(power, 1.0, volume.low) + SOUND_DB,
        reason,
    });
    let (wall, away) = (site.quiet_wall, site.quiet_distance_m);
    let next = |wall| next_db(power, away.value, volume.value, wall);
    let loudest = if wall.is_assumed() { WallKind::Door } else { wall.value };
    let likely = next(wall.value);
    let likely = if likely > 0.0 { likely } else { 0.0 };
    let worst = next_db(power, away.low, volume.low, loudest);
    let reason = Message::new("start-why-sound-next").quantity("likely", likely, Unit::Decibel);
    all.push(Expected {
        reading: Reading::SoundNext,
        // Other sounds of the house may well be louder: too quiet tells nothing.
        low: 0.0,
        likely,
        high: SOUND_DB + if worst > likely { worst } else { likely },
        reason,
    });
}
