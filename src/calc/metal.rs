//! Metal of a flask: tree, button, reserve, loss, charge. One button a flask, never one a piece.

use super::alloy::AlloyTerms;
use super::book::{Book, Id};
use super::finding::{self, Arg};
use super::pass::Pass;
use super::rule::{givens, inputs, rules};
use super::tree::TreeFigures;
use super::value::Cause;
use crate::job::{Flask, Place};
use crate::quantity::{Kind, half_up};
use crate::stock::{Alloy, Base};
use rust_decimal::Decimal;

inputs! {
    /// The button is at least so heavy.
    BUTTON_LEAST "flask.button-least" Mass;
    /// The button is at least this share of the tree's metal.
    BUTTON_SHARE "flask.button-share" Ratio;
    /// Metal kept in reserve.
    RESERVE "flask.reserve" Mass;
    /// Melt loss typed in.
    LOSS "flask.melt-loss" Ratio;
    /// The balance's step.
    STEP "studio.balance-step" Mass;
    /// Room for the button in the base's funnel.
    FUNNEL "base.funnel" Volume;
    /// The flask's alloy.
    FLASK_ALLOY "flask.alloy-density" Density;
    /// The flask's tree.
    FLASK_TREE "flask.tree-volume" Volume;
}

givens! {
    /// Half a troy ounce.
    BUTTON_LEAST_DEFAULT "flask.button-least" Mass = 15.551_738_4; Article "casters' forum: half a troy ounce for the button, one a flask"
    /// A tenth of the tree.
    BUTTON_SHARE_DEFAULT "flask.button-share" Ratio = 0.10; Article "supply-house casting primer: 10 % for the button"
    /// No reserve.
    NO_RESERVE "flask.reserve" Mass = 0.0; CommonPractice "none until one is entered"
    /// A balance that shows a tenth of a gram.
    STEP_DEFAULT "studio.balance-step" Mass = 0.1; CommonPractice "a bench balance of 0.1 g until the studio enters its own"
}

rules! {
    /// Metal in place of one weighed material.
    METAL_FROM_WEIGHT "flask.metal-from-weight" (weight: Mass, density: Density, alloy: Density) -> Mass
        = Formula "weight*alloy/density" { weight * alloy / density };
        Article "the volume is conserved: metal = pattern × density of metal / density of pattern (worked algebra, casters' forum)"
    /// Metal in place of a part whose volume was computed.
    METAL_FROM_VOLUME "flask.metal-from-volume" (volume: Volume, alloy: Density) -> Mass
        = Formula "volume*alloy" { volume * alloy };
        Computed "volume times density"
    /// Metal in place of the whole tree, part by part.
    TREE_METAL "flask.tree-metal" (part: Mass) -> Mass = Sum "sum(part)"; Computed "all parts together"
    /// The button.
    BUTTON "flask.button" (least: Mass, share: Ratio, tree: Mass) -> Mass
        = Formula "max(least, share*tree)" { least.max(share * tree) };
        CommonPractice "one a flask: a fixed mass or a share of the tree, whichever is more"
    /// Metal that has to go into the crucible.
    CHARGE "flask.charge" (tree: Mass, button: Mass, reserve: Mass, loss: Ratio) -> Mass
        = Formula "(tree + button + reserve)/(1 - loss)" { (tree + button + reserve) / (1.0 - loss) };
        Computed "what is lost in the melt is put in beforehand"
    /// The charge as it is weighed out: up to the balance's next step.
    CHARGE_ON_BALANCE "flask.charge-on-balance" (charge: Mass, step: Mass) -> Mass
        = Decimal "ceilto(charge, step)" { ceil_to(charge, step) };
        CommonPractice "rounded up: too little metal loses the flask"
    /// Volume of the button.
    BUTTON_VOLUME "flask.button-volume" (button: Mass, density: Density) -> Volume
        = Formula "button/density" { button / density };
        Computed "mass over density"
}

/// The next multiple of `step` at or above `number`; a hair of binary noise above a step does not count.
pub(super) fn ceil_to(number: Decimal, step: Decimal) -> Option<Decimal> {
    let steps = half_up(number.checked_div(step)?, 6).ceil();
    steps.checked_mul(step)
}

/// Metal figures of one flask.
#[derive(Debug, Clone, Copy)]
pub struct MetalFigures {
    /// Metal in place of the tree.
    pub tree: Id,
    /// The button.
    pub button: Id,
    /// The reserve.
    pub reserve: Id,
    /// Melt loss as a share.
    pub loss: Id,
    /// The charge.
    pub charge: Id,
    /// The charge as it is weighed out.
    pub on_balance: Id,
    /// Volume of the button, where the base is known.
    pub button_volume: Option<Id>,
}

/// The charge for a tree of this metal in this alloy where nothing else is said: with the usual button, no reserve and the alloy's own loss.
pub(super) fn usual_charge(book: &mut Book, tree: Id, alloy: &Alloy) -> Id {
    let place = Place::Job;
    let [least, share] = [&BUTTON_LEAST_DEFAULT, &BUTTON_SHARE_DEFAULT].map(|given| book.assumed(given, place));
    let button = book.derive(&BUTTON, place, [least, share, tree]);
    let reserve = book.assumed(&NO_RESERVE, place);
    let loss = book.shelf(&super::alloy::ALLOY_LOSS, &alloy.id, &alloy.melt_loss);
    book.derive(&CHARGE, place, [tree, button, reserve, loss])
}

impl<'a> Pass<'a> {
    pub(super) fn flask_metal(
        &mut self,
        flask: &'a Flask,
        tree: Option<&TreeFigures>,
        alloy: Option<AlloyTerms<'a>>,
        base: Option<&'a Base>,
    ) -> MetalFigures {
        let place = Place::Flask(flask.id);
        let density = alloy.map_or_else(|| self.book.absent(&FLASK_ALLOY, place, Cause::NotChosen), |alloy| alloy.density);
        let mut parts = Vec::new();
        for part in tree.map(|tree| tree.parts.as_slice()).unwrap_or_default() {
            let metal = match (part.weight, part.density) {
                (Some(weight), Some(material)) => self.book.derive(&METAL_FROM_WEIGHT, part.place, [weight, material, density]),
                _ => self.book.derive(&METAL_FROM_VOLUME, part.place, [part.volume, density]),
            };
            parts.push(metal);
        }
        if let Some(tree) = tree.filter(|tree| !tree.weighed) {
            // A computed tree's welds and fillets are metal too: its whole volume rules.
            parts = vec![self.book.derive(&METAL_FROM_VOLUME, place, [tree.volume, density])];
        }
        if parts.is_empty() {
            let nothing = self.book.absent(&FLASK_TREE, place, Cause::NotChosen);
            parts.push(self.book.derive(&METAL_FROM_VOLUME, place, [nothing, density]));
        }
        let tree = self.book.derive_over(&TREE_METAL, place, &parts);
        let least = match flask.button.least {
            Some(grams) => self.book.weighed(&BUTTON_LEAST, place, grams),
            None => self.book.assumed(&BUTTON_LEAST_DEFAULT, place),
        };
        let share = self.book.entered_or(&BUTTON_SHARE, place, flask.button.share, &BUTTON_SHARE_DEFAULT);
        let button = self.book.derive(&BUTTON, place, [least, share, tree]);
        let reserve = match flask.reserve {
            Some(grams) => self.book.weighed(&RESERVE, place, grams),
            None => self.book.assumed(&NO_RESERVE, place),
        };
        let loss = match (flask.melt_loss, alloy) {
            (Some(loss), _) => self.book.entered(&LOSS, place, loss.get()),
            (None, Some(alloy)) => alloy.loss,
            (None, None) => self.book.absent(&LOSS, place, Cause::NotChosen),
        };
        let charge = self.book.derive(&CHARGE, place, [tree, button, reserve, loss]);
        let step = self.balance_step(place);
        let on_balance = self.book.derive(&CHARGE_ON_BALANCE, place, [charge, step]);
        let button_volume = base.map(|base| self.button_in_funnel(place, button, density, base));
        MetalFigures { tree, button, reserve, loss, charge, on_balance, button_volume }
    }

    pub(super) fn balance_step(&mut self, place: Place) -> Id {
        match self.studio.balance_step {
            Some(step) => self.book.studio_grams(&STEP, step),
            None => self.book.assumed(&STEP_DEFAULT, place),
        }
    }

    fn button_in_funnel(&mut self, place: Place, button: Id, density: Id, base: &'a Base) -> Id {
        let volume = self.book.derive(&BUTTON_VOLUME, place, [button, density]);
        let funnel = self.shelf_term(&FUNNEL, &base.id, &base.funnel_cm3);
        debug_assert_eq!(self.book.kind(funnel), Kind::Volume);
        if let (Some(button), Some(room)) = (self.book.number(volume), self.book.number(funnel))
            && button > room
        {
            self.find_on(&finding::BUTTON_OVER_FUNNEL, place, volume, vec![Arg::Figure(volume), Arg::Figure(funnel)]);
        }
        volume
    }
}
