//! Points of the unit cube that fill it evenly, and the normal numbers made of them.
//!
//! Owen-scrambled Sobol points (Burley, "Practical Hash-based Owen Scrambling", JCGT 2020) by the library
//! `sobol_burley`: integer arithmetic only, the same on every platform. Each point comes from its index and the seed
//! alone, so that nothing depends on who computes which.

/// Dimensions the library has; more are padded with a seed of their own.
const DIMENSIONS: u32 = sobol_burley::NUM_DIMENSIONS;
/// Half a step of the library's 24-bit fractions: keeps points off 0 and 1.
const HALF_STEP: f64 = 0.5 / 16_777_216.0;

/// Coordinate `dimension` of point `index`, strictly between 0 and 1. Points beyond 2¹⁶ repeat.
pub fn uniform(index: u32, dimension: u32, seed: u32) -> f64 {
    let pad = (dimension / DIMENSIONS).wrapping_mul(0x9e37_79b9);
    f64::from(sobol_burley::sample(index & 0xffff, dimension % DIMENSIONS, seed ^ pad)) + HALF_STEP
}

/// Point `index` as standard normal numbers.
pub fn normals(index: u32, dimensions: usize, seed: u32) -> Vec<f64> {
    (0..dimensions as u32).map(|d| normal_quantile(uniform(index, d, seed))).collect()
}

/// The standard normal number that a share `p` of all lie below: Wichura's algorithm AS 241 (PPND16, Applied
/// Statistics 37, 1988; relative error about 1e-16). Beyond 0 and 1 it is that of the nearest double between.
pub fn normal_quantile(p: f64) -> f64 {
    let p = p.clamp(1e-300, 1.0 - 1.2e-16);
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        return q * ratio(0.180625 - q * q, &CENTRE);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    let r = libm::sqrt(-libm::log(tail));
    let z = if r <= 5.0 { ratio(r - 1.6, &MIDDLE) } else { ratio(r - 5.0, &FAR) };
    if q < 0.0 { -z } else { z }
}

/// The share of standard normal numbers below `z`.
pub fn normal_share(z: f64) -> f64 {
    0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2)
}

/// Numerator and denominator of a rational function, from the constant up.
type Ratio = [[f64; 8]; 2];

fn ratio(x: f64, of: &Ratio) -> f64 {
    let [above, below] = of.map(|c| c.iter().rev().fold(0.0, |sum, c| sum * x + c));
    above / below
}

const CENTRE: Ratio = [
    [
        3.387_132_872_796_366_5e0,
        1.331_416_678_917_843_8e2,
        1.971_590_950_306_551_3e3,
        1.373_169_376_550_946e4,
        4.592_195_393_154_987e4,
        6.726_577_092_700_87e4,
        3.343_057_558_358_813e4,
        2.509_080_928_730_122_7e3,
    ],
    [
        1.0,
        4.231_333_070_160_091e1,
        6.871_870_074_920_579e2,
        5.394_196_021_424_751e3,
        2.121_379_430_158_659_7e4,
        3.930_789_580_009_271e4,
        2.872_908_573_572_194_3e4,
        5.226_495_278_852_854e3,
    ],
];
const MIDDLE: Ratio = [
    [
        1.423_437_110_749_683_5e0,
        4.630_337_846_156_546e0,
        5.769_497_221_460_691e0,
        3.647_848_324_763_204_5e0,
        1.270_458_252_452_368_4e0,
        2.417_807_251_774_506e-1,
        2.272_384_498_926_918_4e-2,
        7.745_450_142_783_414e-4,
    ],
    [
        1.0,
        2.053_191_626_637_759e0,
        1.676_384_830_183_803_8e0,
        6.897_673_349_851e-1,
        1.481_039_764_274_800_8e-1,
        1.519_866_656_361_645_7e-2,
        5.475_938_084_995_345e-4,
        1.050_750_071_644_416_9e-9,
    ],
];
const FAR: Ratio = [
    [
        6.657_904_643_501_103e0,
        5.463_784_911_164_114e0,
        1.784_826_539_917_291_3e0,
        2.965_605_718_285_048_7e-1,
        2.653_218_952_657_612_4e-2,
        1.242_660_947_388_078_4e-3,
        2.711_555_568_743_487_6e-5,
        2.010_334_399_292_288_1e-7,
    ],
    [
        1.0,
        5.998_322_065_558_88e-1,
        1.369_298_809_227_358e-1,
        1.487_536_129_085_061_5e-2,
        7.868_691_311_456_133e-4,
        1.846_318_317_510_054_7e-5,
        1.421_511_758_316_446e-7,
        2.044_263_103_389_939_8e-15,
    ],
];

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The two are each other's inverse.
        #[test]
        fn quantile_and_share_are_inverse(z in -7.0..7.0f64) {
            let back = normal_quantile(normal_share(z));
            // Near 1 a share has few digits left: one part in 1e16 of it over the density there.
            let lost = 3e-16 / libm::exp(-0.5 * z * z).max(1e-300) * (1.0 + f64::from(z > 0.0) * 2.0);
            prop_assert!((back - z).abs() < 1e-12 + lost, "{} came back as {}", z, back);
        }

        #[test]
        fn points_come_from_index_and_seed_alone(index in 0..65_536u32, dimension in 0..600u32, seed in any::<u32>()) {
            let u = uniform(index, dimension, seed);
            prop_assert!(u > 0.0 && u < 1.0);
            prop_assert_eq!(u, uniform(index, dimension, seed));
        }
    }

    #[test]
    fn ends_are_finite() {
        for p in [0.0, 1.0, -1.0, 2.0, f64::MIN_POSITIVE] {
            assert!(normal_quantile(p).is_finite(), "{p}");
        }
    }

    /// Every block of 2^k points has one in each of 2^k equal parts of each coordinate: what makes them even.
    #[test]
    fn each_coordinate_is_stratified() {
        for dimension in [0, 1, 7, 40, 200] {
            let mut hit = [false; 64];
            for index in 0..64 {
                hit[(uniform(index, dimension, 9) * 64.0) as usize] = true;
            }
            assert!(hit.iter().all(|h| *h), "{dimension}");
        }
    }
}
