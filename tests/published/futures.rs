//! `tankful::core::futures` against scipy and numpy: shares of variance, quantiles, normal numbers.
use crate::fixture::{Fixture, Worst, hold};
use std::f64::consts::PI;
use tankful::core::futures::points::{normal_quantile, normal_share};
use tankful::core::futures::shares::shares;
use tankful::core::futures::summary::quantile;

/// Both are estimates, ours from 2^13 points, scipy's from 2^16: their spread between seeds.
const SHARE: f64 = 0.03;
/// The fixture keeps 13 digits.
const QUANTILE: f64 = 1e-12;
/// Of z: the digits of the fixture, and of a share next to 1.
const NORMAL: f64 = 1e-6;

#[test]
fn shares_of_variance_meet_scipy() {
    let fixture = Fixture::load("futures");
    let mut ishigami = |z: &[f64]| {
        let x: Vec<f64> = z.iter().map(|z| PI * (2.0 * normal_share(*z) - 1.0)).collect();
        let second = libm::sin(x[1]);
        libm::sin(x[0]) + 7.0 * second * second + 0.1 * libm::pow(x[2], 4.0) * libm::sin(x[0])
    };
    let ours = shares(&mut ishigami, &[Some(0), Some(1), Some(2)], 1 << 13, 4);
    let (mut first, mut total) = (Worst::of("first order"), Worst::of("total order"));
    for [input, alone, all] in fixture.table("ishigami").rows(["input", "first", "total"]) {
        let share = ours[input as usize];
        first.see(share.alone, alone, input);
        total.see(share.total, all, input);
    }
    hold([(first, SHARE), (total, SHARE)]);
}

/// Variance of a linear function of normal numbers, in closed form; and inputs of one group count together.
#[test]
fn shares_of_a_linear_function_are_the_closed_form() {
    let rows = Fixture::load("futures").table("linear").rows(["slope", "share"]);
    let mut linear = |z: &[f64]| rows.iter().zip(z).map(|([slope, _], z)| slope * z).sum::<f64>();
    let ours = shares(&mut linear, &[Some(0), Some(1), Some(2), Some(3)], 1 << 12, 1);
    let (mut alone, mut total) = (Worst::of("alone"), Worst::of("total"));
    for (k, [_, share]) in rows.iter().enumerate() {
        alone.see(ours[k].alone, *share, k);
        total.see(ours[k].total, *share, k);
    }
    hold([(alone, SHARE), (total, SHARE)]);
    let grouped = shares(&mut linear, &[Some(0), Some(1), Some(1), None], 1 << 12, 1);
    assert!(grouped.len() == 2 && grouped[0].total < grouped[1].total);
    assert!(shares(&mut |_| 3.0, &[Some(0)], 64, 1).iter().all(|s| s.total == 0.0 && s.alone == 0.0));
}

#[test]
fn quantiles_meet_numpy_and_normal_numbers_scipy() {
    let fixture = Fixture::load("futures");
    let figures: Vec<f64> = serde_json::from_value(fixture.0["figures"].clone()).expect("figures");
    let mut worst = Worst::of("quantile");
    for [count, share, value] in fixture.table("quantiles").rows(["count", "share", "value"]) {
        let mut some = figures[..count as usize].to_vec();
        some.sort_by(f64::total_cmp);
        worst.see(quantile(&some, share), value, (count, share));
    }
    assert_eq!(quantile(&[], 0.5), 0.0);
    let mut normal = Worst::of("normal number");
    for [share, z] in fixture.table("normal").rows(["share", "z"]) {
        normal.see(normal_quantile(share), z, share);
    }
    hold([(worst, QUANTILE), (normal, NORMAL)]);
}
