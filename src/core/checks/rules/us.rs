//! The United States' set. All from memory: National Electrical Code of 2023, International Residential, Mechanical
//! and Fuel Gas Codes of 2021 (published-values of the project's brief where listed there). Local code may differ
//! and decides.

use super::{Conductor, Rule, Rules};
use crate::core::units::{BTU_J, FOOT_M, PSI_PA};

const fn rule<T: Copy>(is: T, cites: &'static str) -> Rule<T> {
    Rule { is, cites }
}

const fn wire(
    awg: u8,
    copper_a: [f64; 2],
    aluminium_a: [f64; 2],
    breaker_a: [f64; 2],
    kft: [f64; 2],
) -> Conductor {
    let ohm_per_m = [kft[0] / (1_000.0 * FOOT_M), kft[1] / (1_000.0 * FOOT_M)];
    Conductor { awg, copper_a, aluminium_a, breaker_a, ohm_per_m }
}

/// No cap of 240.4(D).
const ANY: f64 = 1_000.0;

/// Ampacity: table 310.16, 60 and 75 °C columns (334.80 holds nonmetallic-sheathed cable to 60 °C). Caps of small
/// wires: 240.4(D). Resistance at 75 °C: chapter 9, table 8, uncoated copper (solid to 10 AWG, stranded above) and
/// aluminium, ohms in 1,000 ft.
const CONDUCTORS: [Conductor; 5] = [
    wire(14, [15.0, 20.0], [0.0, 0.0], [15.0, 0.0], [3.07, 5.06]),
    wire(12, [20.0, 25.0], [15.0, 20.0], [20.0, 15.0], [1.93, 3.18]),
    wire(10, [30.0, 35.0], [25.0, 30.0], [30.0, 25.0], [1.21, 2.00]),
    wire(8, [40.0, 50.0], [35.0, 40.0], [ANY, ANY], [0.778, 1.28]),
    wire(6, [55.0, 65.0], [40.0, 50.0], [ANY, ANY], [0.491, 0.808]),
];

/// Square feet in a m².
const FT2_PER_M2: f64 = 1.0 / (FOOT_M * FOOT_M);

/// The set.
pub static US: Rules = Rules {
    continuous: rule(1.25, "rule-nec-422-13"),
    breakers_a: &[15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0],
    largest_breaker: rule(1.5, "rule-nec-422-11"),
    conductors: rule(&CONDUCTORS, "rule-nec-310-16"),
    voltage_drop: rule(0.03, "rule-nec-210-19"),
    shared_circuit: rule((0.5, 15.0), "rule-nec-210-23"),
    disconnect: "rule-nec-422-31",
    ground_wire: "rule-nec-250-110",
    service_load: rule([3.0 * FT2_PER_M2, 4_500.0, 8_000.0, 0.4], "rule-nec-220-83"),
    bonding: "rule-nec-250-104",
    condensate_slope: rule(0.125 / 12.0, "rule-imc-307"),
    pressure_pa: rule(80.0 * PSI_PA, "rule-irc-2903-3"),
    expansion: "rule-irc-2903-4",
    relief_end_m: rule(6.0 * 0.0254, "rule-irc-2804-6"),
    pan: "rule-irc-2801-6",
    vacuum_relief: "rule-irc-2804-7",
    straps: "rule-irc-2801-8",
    shutoff: "rule-irc-2903-9",
    dissimilar: "rule-irc-2906",
    service_m: rule(30.0 * 0.0254, "rule-irc-1305"),
    ignition_m: rule(18.0 * 0.0254, "rule-irc-2801-7"),
    // 40 lb a square foot of live load in dwellings.
    floor_kg_per_m2: rule(40.0 * 0.453_592_37 * FT2_PER_M2, "rule-irc-301-5"),
    // 50 cubic feet for each 1,000 Btu/h of all the burners in the room.
    burner_air_m3_per_w: rule(50.0 * FOOT_M * FOOT_M * FOOT_M / (1_000.0 * BTU_J / 3_600.0), "rule-ifgc-304"),
    flue: "rule-ifgc-5",
    fuel_line: "rule-ifgc-4",
    // A home performance trade's limit for a natural-draught burner beside a furnace or boiler.
    draught_pa: rule(2.0, "rule-bpi"),
    // World Health Organization, Guidelines for Community Noise, 1999.
    bedroom_db: rule(30.0, "rule-who"),
    storage_c: rule(60.0, "rule-ashrae-12"),
    // 120 °F: the household default, and what the burn table gives minutes for.
    tap_c: rule((120.0 - 32.0) / 1.8, "rule-moritz"),
};

#[cfg(test)]
mod tests {
    use super::*;

    /// Published (from memory): the standard sizes up to 60 A, the small wires' breakers, and copper's resistances.
    #[test]
    fn tables_as_published() {
        assert_eq!(US.breakers_a, [15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0]);
        let of = |awg: u8| CONDUCTORS.iter().find(|c| c.awg == awg).expect("in the table");
        for (awg, amps) in [(14, 15.0), (12, 20.0), (10, 30.0), (8, 40.0), (6, 55.0)] {
            assert_eq!(of(awg).copper_a[0], amps);
        }
        for (awg, amps) in [(12, 15.0), (10, 25.0), (8, 35.0), (6, 40.0)] {
            assert_eq!(of(awg).aluminium_a[0], amps);
        }
        for (awg, kft) in [(14, 3.07), (12, 1.93), (10, 1.21), (8, 0.778)] {
            assert!((of(awg).ohm_per_m[0] * 304.8 - kft).abs() < 1e-9);
        }
        // Larger wires carry more and lose less.
        for pair in CONDUCTORS.windows(2) {
            assert!(pair[1].awg < pair[0].awg && pair[1].copper_a[0] > pair[0].copper_a[0]);
            assert!(pair[1].ohm_per_m[0] < pair[0].ohm_per_m[0]);
        }
    }

    /// A 40,000 Btu/h burner breathes 2,000 cubic feet (50 for each 1,000).
    #[test]
    fn air_for_a_burner() {
        let m3 = US.burner_air_m3_per_w.is * 40_000.0 * BTU_J / 3_600.0;
        assert!((m3 / (FOOT_M * FOOT_M * FOOT_M) - 2_000.0).abs() < 1e-6);
    }
}
