//! What published rules ask, as data: one file a country or trade body's set, each figure with the standard and
//! section it comes from. Checks read the set they are given and know no other.

pub mod us;

use crate::core::fit::condensate::PumpClass;

/// A figure of a rule and where it stands (locale identity of standard and section).
#[derive(Clone, Copy, Debug)]
pub struct Rule<T> {
    /// What it asks.
    pub is: T,
    /// Standard and section.
    pub cites: &'static str,
}

/// A size of wire: what it may carry, the largest breaker before it, its resistance.
#[derive(Clone, Copy, Debug)]
pub struct Conductor {
    /// Size, American wire gauge.
    pub awg: u8,
    /// Copper in nonmetallic-sheathed cable (60 °C), and in conduit or armour (75 °C), A.
    pub copper_a: [f64; 2],
    /// Aluminium likewise, A; 0: not used.
    pub aluminium_a: [f64; 2],
    /// Largest breaker before copper and before aluminium of a small size, A.
    pub breaker_a: [f64; 2],
    /// Resistance of copper and of aluminium, ohm/m.
    pub ohm_per_m: [f64; 2],
}

/// A set of rules. Lengths in m, areas in m², pressures in Pa gauge, electrical figures in A, V and W.
#[derive(Debug)]
pub struct Rules {
    /// Share of its current that a continuous load's circuit must carry.
    pub continuous: Rule<f64>,
    /// Standard breakers, A.
    pub breakers_a: &'static [f64],
    /// Largest breaker as a share of the rated current.
    pub largest_breaker: Rule<f64>,
    /// Wires, smallest first.
    pub conductors: Rule<&'static [Conductor]>,
    /// Largest voltage drop advised on a branch, share.
    pub voltage_drop: Rule<f64>,
    /// Share of a circuit with other outlets that a fixed appliance may take, and that circuit's breaker, A.
    pub shared_circuit: Rule<(f64, f64)>,
    /// A means to disconnect in sight, or one that locks.
    pub disconnect: &'static str,
    /// A wire to ground in the cable.
    pub ground_wire: &'static str,
    /// Existing dwelling: W/m² of floor, W of appliance circuits, W counted in full, share of the rest.
    pub service_load: Rule<[f64; 4]>,
    /// Metal water pipe bonded, also across what is replaced.
    pub bonding: &'static str,
    /// Fall of a condensate pipe over its run.
    pub condensate_slope: Rule<f64>,
    /// Highest static pressure.
    pub pressure_pa: Rule<f64>,
    /// Thermal expansion control on closed systems.
    pub expansion: &'static str,
    /// Relief valve discharge: height of its end above the floor.
    pub relief_end_m: Rule<f64>,
    /// Drain pan where a leak would do damage.
    pub pan: &'static str,
    /// Vacuum relief on tanks above the fixtures.
    pub vacuum_relief: &'static str,
    /// Straps against earthquakes.
    pub straps: &'static str,
    /// Shutoff valve on the cold pipe.
    pub shutoff: &'static str,
    /// Joints of steel and copper.
    pub dissimilar: &'static str,
    /// Free floor in front of an appliance.
    pub service_m: Rule<f64>,
    /// Height of an ignition source over a garage's floor.
    pub ignition_m: Rule<f64>,
    /// Load that a wooden floor is built for, kg/m².
    pub floor_kg_per_m2: Rule<f64>,
    /// Air of a room for burners that breathe it, m³ a W of input.
    pub burner_air_m3_per_w: Rule<f64>,
    /// What is left of a flue.
    pub flue: &'static str,
    /// A fuel line left, or one to a new burner.
    pub fuel_line: &'static str,
    /// Largest pressure drop of a room with a burner that draws by its flue alone, Pa.
    pub draught_pa: Rule<f64>,
    /// Steady noise in a bedroom, dB(A).
    pub bedroom_db: Rule<f64>,
    /// Water stored so that Legionella dies, °C.
    pub storage_c: Rule<f64>,
    /// Water at the tap that gives time to draw back, °C.
    pub tap_c: Rule<f64>,
}

/// Practice of the trade that no rule states; common practice, no source.
pub mod practice {
    use super::PumpClass;
    use crate::core::units::{FOOT_M, GALLON_M3, PSI_PA};

    /// Above a tank for pipes and to lift out a filter.
    pub const ABOVE_TANK_M: f64 = 6.0 * 0.0254;
    /// For hands on both sides of a tank on its way.
    pub const HANDS_M: f64 = 2.0 * 0.0254;
    /// Around a standing tank, both sides together.
    pub const AROUND_M: f64 = 2.0 * 0.0254;
    /// A small condensate pump: 65 gal/h with nothing to lift, 15 ft of lift at the most.
    pub const PUMP: PumpClass =
        PumpClass { free_m3_per_s: 65.0 * GALLON_M3 / 3_600.0, shut_off_m: 15.0 * FOOT_M };
    /// Expansion tanks on sale, m³.
    pub const EXPANSION_TANKS_M3: [f64; 3] = [2.0 * GALLON_M3, 4.5 * GALLON_M3, 10.0 * GALLON_M3];
    /// Pressure that a heated system may rise to, Pa: a tenth below the relief valve's 150 psi.
    pub const HIGHEST_PA: f64 = 135.0 * PSI_PA;
    /// What a pressure-reducing valve is set to, Pa.
    pub const REDUCED_PA: f64 = 60.0 * PSI_PA;
    /// Hard water (10.5 gr/gal, 180 mg/L, "very hard" on the usual scale), kg/m³.
    pub const VERY_HARD_KG_PER_M3: f64 = 0.18;
}
