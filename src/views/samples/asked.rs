//! What the made-up book asks of its clients and of the installer's tape.

use crate::views::client::decision_request::{
    DecisionRequest, RequestedAllowance, RequestedApprover, RequestedItem, RequestedOption, RequestedOptionFit,
};
use crate::views::shared::data::Data;
use crate::views::shared::state::{State, StateShape as Shape};
use crate::views::trades::opening_tape::{TapeFrom, TapeRange, TapeRequest};

pub(super) fn asked() -> Data {
    let fit =
        RequestedOptionFit { verdict: State::new(Shape::DoesNotFit, "Does not fit"), sentence: "Too wide.".into() };
    let option = |id: &str, name: &str, price: &str| RequestedOption {
        id: id.into(),
        name: name.into(),
        price: Some(price.into()),
        fit: (id == "steel").then(|| fit.clone()),
    };
    Data::of(&DecisionRequest {
        book: "5f0c".repeat(8),
        issue: 3,
        purpose: "approval".into(),
        ledger: None,
        title: "Alder Court".into(),
        post: None,
        email: Some("office@pennick.example".into()),
        approvers: vec![
            RequestedApprover { id: "ada".into(), name: "Ada Okonedo".into() },
            RequestedApprover { id: "sven".into(), name: "Sven Lindqvist".into() },
        ],
        items: vec![RequestedItem {
            room: "kitchen".into(),
            room_name: "Kitchen".into(),
            item: "refrigerator".into(),
            name: "Refrigerator".into(),
            tag: "K-07".into(),
            page: "items/kitchen-refrigerator-3.html".into(),
            mark: "9c410e7b".repeat(8),
            askable: true,
            options: vec![option("walnut", "behind walnut", "5640.00"), option("steel", "steel", "2240.00")],
            chosen: None,
            allowance: Some("appliances".into()),
            due: Some("2027-01-25".into()),
            holds_up: Some("counters set, 19 Apr 2027".into()),
            decided: vec![],
        }],
        allowances: vec![RequestedAllowance { name: "appliances".into(), allowed: "3400.00".into(), settled: None }],
        currency: "USD".into(),
        sign: "$".into(),
        decimals: 2,
    })
}

pub(super) fn tape() -> Data {
    let inches = |inches: i64| Some((inches * 25_400_000).to_string());
    let range = |what: &str, least: Option<String>, most: Option<String>| TapeRange {
        what: what.into(),
        least,
        most,
        ..TapeRange::default()
    };
    Data::of(&TapeRequest {
        book: None,
        issue: None,
        ledger: None,
        title: "Alder Court".into(),
        post: None,
        email: None,
        units: "imperial".into(),
        alone: false,
        decimal: ".".into(),
        room: "kitchen".into(),
        opening: "refrigerator".into(),
        asks: vec![range("width", inches(30), inches(31)), range("height", inches(70), None)],
        from: TapeFrom { floor: "present-floor".into(), ..TapeFrom::default() },
        square: 3_175_000.to_string(),
    })
}

pub(super) fn delivery() -> Data {
    Data::of(&serde_json::json!({
        "book": "5f0c".repeat(8), "issue": 3, "title": "Alder Court", "post": null, "email": null,
        "from": "Oren & Daughters", "claims": {"5 working days": {"2027-04-03": "2027-04-09"}},
        "items": [{
            "room": "kitchen", "item": "refrigerator", "name": "K-07 Refrigerator", "option": "steel",
            "mark": "9c410e7b".repeat(8), "looks": ["model", "finish"], "claim": "5 working days",
        }],
    }))
}

pub(super) fn holding() -> Data {
    Data::of(&serde_json::json!({
        "book": "5f0c".repeat(8), "issue": 3, "title": "Alder Court", "post": null, "email": null,
    }))
}
