//! What whoever sent a response is told: little, and the same to every stranger.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;

/// What became of a response.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// It is recorded, and on the disk.
    Recorded {
        /// In which way: `recorded`, `recorded as unsigned` or `already recorded`.
        outcome: &'static str,
        /// What is to be said besides, such as which decisions were not taken; whoever sent it proved to
        /// know what was shown.
        why: String,
    },
    /// It is not recorded, and is not going to be.
    Refused,
    /// It is not recorded, though nothing is known against it: it may be sent again.
    Failed,
}

/// Why nothing was taken, before anybody looked at what it says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotTaken {
    /// The body is larger than a response can be.
    TooLarge,
    /// It took too long to arrive.
    TooSlow,
    /// Too many came from there, or in all.
    TooMany,
}

/// The answer in JSON; the page shows it.
#[derive(Serialize)]
struct Told<'a> {
    outcome: &'a str,
    #[serde(skip_serializing_if = "str::is_empty")]
    why: &'a str,
}

impl IntoResponse for Answer {
    fn into_response(self) -> Response {
        match &self {
            Self::Recorded { outcome, why } => told(StatusCode::OK, &Told { outcome, why }),
            // One answer whatever was wrong: it must not tell a key, a book or a name from another.
            Self::Refused => told(StatusCode::BAD_REQUEST, &Told { outcome: "not recorded", why: "" }),
            Self::Failed => {
                let why = "it could not be kept just now; send it again later";
                told(StatusCode::SERVICE_UNAVAILABLE, &Told { outcome: "not recorded", why })
            }
        }
    }
}

impl IntoResponse for NotTaken {
    fn into_response(self) -> Response {
        let (status, why) = match self {
            Self::TooLarge => (StatusCode::PAYLOAD_TOO_LARGE, "it is larger than a response can be"),
            Self::TooSlow => (StatusCode::REQUEST_TIMEOUT, "it took too long to arrive; send it again"),
            Self::TooMany => (StatusCode::TOO_MANY_REQUESTS, "too much came at once; send it again in a minute"),
        };
        let mut answer = told(status, &Told { outcome: "not recorded", why });
        if self == Self::TooMany {
            answer.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from_static("60"));
        }
        answer
    }
}

fn told(status: StatusCode, told: &Told<'_>) -> Response {
    let text = serde_json::to_string(told).unwrap_or_default();
    (status, [(header::CONTENT_TYPE, "application/json")], text).into_response()
}
