//! The heaters that are compared: the present one, the same again, and the classes that may replace it,
//! each described by label figures alone.

pub mod offer;
pub mod offered;
pub mod typical_price;

use super::case::HeaterKind;
use super::message::{Arg, Message};
use serde::{Deserialize, Serialize};
use uom::si::f64::{Length, Mass, Power, Volume};

/// Identity of a candidate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CandidateId {
    /// Keep the present heater until it fails, then the same again.
    Keep,
    /// A new electric tank.
    ElectricTank,
    /// A new gas tank.
    GasTank,
    /// A new propane tank.
    PropaneTank,
    /// A new oil tank.
    OilTank,
    /// A heat pump tank of 40 gal at 240 V.
    #[serde(rename = "heat_pump_40")]
    HeatPump40,
    /// A heat pump tank of 50 gal at 240 V.
    #[serde(rename = "heat_pump_50")]
    HeatPump50,
    /// A heat pump tank of 65 gal at 240 V.
    #[serde(rename = "heat_pump_65")]
    HeatPump65,
    /// A heat pump tank of 80 gal at 240 V.
    #[serde(rename = "heat_pump_80")]
    HeatPump80,
    /// A heat pump tank of 50 gal on a 120 V outlet, without large elements.
    #[serde(rename = "plug_in_50")]
    PlugIn50,
    /// First heater of the installer's offer.
    #[serde(rename = "offer_1")]
    Offer1,
    /// Second heater of the offer.
    #[serde(rename = "offer_2")]
    Offer2,
    /// Third heater of the offer.
    #[serde(rename = "offer_3")]
    Offer3,
    /// Fourth heater of the offer.
    #[serde(rename = "offer_4")]
    Offer4,
    /// Fifth heater of the offer.
    #[serde(rename = "offer_5")]
    Offer5,
    /// Sixth heater of the offer.
    #[serde(rename = "offer_6")]
    Offer6,
}

impl CandidateId {
    /// Every identity, in the order shown.
    pub const ALL: [CandidateId; 16] = [
        CandidateId::Keep,
        CandidateId::ElectricTank,
        CandidateId::GasTank,
        CandidateId::PropaneTank,
        CandidateId::OilTank,
        CandidateId::HeatPump40,
        CandidateId::HeatPump50,
        CandidateId::HeatPump65,
        CandidateId::HeatPump80,
        CandidateId::PlugIn50,
        CandidateId::Offer1,
        CandidateId::Offer2,
        CandidateId::Offer3,
        CandidateId::Offer4,
        CandidateId::Offer5,
        CandidateId::Offer6,
    ];

    /// The heaters of an offer, in its order.
    pub const OFFERS: [CandidateId; 6] = [
        CandidateId::Offer1,
        CandidateId::Offer2,
        CandidateId::Offer3,
        CandidateId::Offer4,
        CandidateId::Offer5,
        CandidateId::Offer6,
    ];

    /// The identity with this code, if there is one.
    pub fn from_code(code: &str) -> Option<CandidateId> {
        CandidateId::ALL.into_iter().find(|id| id.code() == code)
    }

    /// The code in files and locale keys (`candidate-<code with dashes>`).
    pub const fn code(self) -> &'static str {
        match self {
            CandidateId::Keep => "keep",
            CandidateId::ElectricTank => "electric_tank",
            CandidateId::GasTank => "gas_tank",
            CandidateId::PropaneTank => "propane_tank",
            CandidateId::OilTank => "oil_tank",
            CandidateId::HeatPump40 => "heat_pump_40",
            CandidateId::HeatPump50 => "heat_pump_50",
            CandidateId::HeatPump65 => "heat_pump_65",
            CandidateId::HeatPump80 => "heat_pump_80",
            CandidateId::PlugIn50 => "plug_in_50",
            CandidateId::Offer1 => "offer_1",
            CandidateId::Offer2 => "offer_2",
            CandidateId::Offer3 => "offer_3",
            CandidateId::Offer4 => "offer_4",
            CandidateId::Offer5 => "offer_5",
            CandidateId::Offer6 => "offer_6",
        }
    }

    /// The key of its name in the locale files; [`Candidate::name`] knows what an offer calls it.
    pub fn key(self) -> String {
        format!("candidate-{}", self.code().replace('_', "-"))
    }
}

/// What a heater's energy label and nameplate say.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Label {
    /// What heats the water.
    pub kind: HeaterKind,
    /// Nominal volume.
    pub nominal_volume: Volume,
    /// Uniform energy factor.
    pub uniform_energy_factor: f64,
    /// First-hour rating.
    pub first_hour_rating: Volume,
    /// Each electric element (zero: none), or the burner's input.
    pub input: Power,
    /// Heat the heat pump gives at rating conditions (zero: no heat pump). Not on every nameplate:
    /// typical of the class then.
    pub heat_pump_output: Power,
}

/// Size, weight and connection, from the label entry or typical of the class.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    /// Height.
    pub height: Length,
    /// Diameter, or the larger side.
    pub diameter: Length,
    /// Weight empty.
    pub empty_mass: Mass,
    /// Supply voltage it is made for; zero for none.
    pub volts: f64,
    /// Breaker it asks for in A; zero for none.
    pub breaker_a: f64,
    /// Free air it asks for.
    pub free_air: Volume,
    /// Sound power of its compressor and fan, dB(A); zero for none.
    pub sound_power_db: f64,
}

/// A heater that can be simulated.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Candidate {
    /// Identity.
    pub id: CandidateId,
    /// What the offer calls it; empty where the locale files name it.
    pub called: String,
    /// Label figures.
    pub label: Label,
    /// Size and connection.
    pub body: Body,
}

impl Candidate {
    /// Its name. What an offer calls it goes in as it is: a plain text, never a pattern or markup.
    pub fn name(&self) -> Message {
        if self.called.is_empty() {
            return Message::new(self.id.key());
        }
        Message::new("candidate-offered").with("name", Arg::Verbatim(self.called.clone()))
    }

    /// True for a new heat pump tank.
    pub fn is_heat_pump(&self) -> bool {
        self.id != CandidateId::Keep && self.label.kind == HeaterKind::HeatPump
    }

    /// True for a new heat pump tank made for a 120 V outlet.
    pub fn is_plug_in(&self) -> bool {
        self.is_heat_pump() && self.body.volts < 200.0
    }
}
