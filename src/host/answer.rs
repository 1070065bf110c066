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
        /// The items whose decisions were not taken: `kitchen/range`.
        not_taken: Vec<String>,
        /// The newest issue, by which an older page can know that it is one.
        newest: Option<u32>,
    },
    /// It is what was shown, and none of it is what is issued now.
    Outdated {
        /// The newest issue.
        newest: Option<u32>,
    },
    /// It proves nothing by itself, and as much as may wait to be confirmed waits already.
    Full,
    /// It is not recorded, and is not going to be.
    Refused,
    /// It is not recorded, though nothing is known against it: it may be sent again.
    Failed,
}

/// What became of a response: what its sender is told, and what the log is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenIn {
    /// What its sender is told.
    pub answer: Answer,
    /// Why it is not recorded, or what of it is not: in words of ours, with nothing that its sender wrote.
    pub why: Option<String>,
}

impl From<Answer> for TakenIn {
    fn from(answer: Answer) -> Self {
        Self { answer, why: None }
    }
}

/// Why a response was not recorded, beside its answer on the way to the log; it is never sent.
#[derive(Clone, Debug)]
pub(super) struct WhyNot(pub(super) String);

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

/// What is told of a response that changed nothing.
const NOT: &str = "not recorded";

/// The answer in JSON; the page words it.
#[derive(Default, Serialize)]
struct AnswerBody<'a> {
    outcome: &'a str,
    #[serde(skip_serializing_if = "str::is_empty")]
    why: &'a str,
    #[serde(rename = "not taken", skip_serializing_if = "<[_]>::is_empty")]
    not_taken: &'a [String],
    #[serde(rename = "newest issue", skip_serializing_if = "Option::is_none")]
    newest: Option<u32>,
}

impl IntoResponse for Answer {
    fn into_response(self) -> Response {
        match &self {
            Self::Recorded { outcome, why, not_taken, newest } => {
                told(StatusCode::OK, &AnswerBody { outcome, why, not_taken, newest: *newest })
            }
            Self::Outdated { newest } => {
                let why = "nothing that it decides is what is issued now";
                told(StatusCode::CONFLICT, &AnswerBody { outcome: NOT, why, newest: *newest, ..AnswerBody::default() })
            }
            // "Must not be repeated until it is asked for by a separate user action" (RFC 4918, section 11.5).
            Self::Full => {
                let why = "too many that nobody has confirmed wait already; answer by private link, or tell the office";
                told(StatusCode::INSUFFICIENT_STORAGE, &AnswerBody { outcome: NOT, why, ..AnswerBody::default() })
            }
            // One answer whatever was wrong: it must not tell a key, a book or a name from another.
            Self::Refused => told(StatusCode::BAD_REQUEST, &AnswerBody { outcome: NOT, ..AnswerBody::default() }),
            Self::Failed => {
                let why = "it could not be kept just now; send it again later";
                told(StatusCode::SERVICE_UNAVAILABLE, &AnswerBody { outcome: NOT, why, ..AnswerBody::default() })
            }
        }
    }
}

impl IntoResponse for TakenIn {
    fn into_response(self) -> Response {
        let mut answer = self.answer.into_response();
        if let Some(why) = self.why {
            answer.extensions_mut().insert(WhyNot(why));
        }
        answer
    }
}

impl IntoResponse for NotTaken {
    fn into_response(self) -> Response {
        let (status, why) = match self {
            Self::TooLarge => (StatusCode::PAYLOAD_TOO_LARGE, "it is larger than a response can be"),
            Self::TooSlow => (StatusCode::REQUEST_TIMEOUT, "it took too long to arrive; send it again"),
            Self::TooMany => (StatusCode::TOO_MANY_REQUESTS, "too much came at once; send it again in a minute"),
        };
        let mut answer = told(status, &AnswerBody { outcome: NOT, why, ..AnswerBody::default() });
        if self == Self::TooMany {
            answer.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from_static("60"));
        }
        answer.extensions_mut().insert(WhyNot(why.into()));
        answer
    }
}

fn told(status: StatusCode, told: &AnswerBody<'_>) -> Response {
    let text = serde_json::to_string(told).unwrap_or_default();
    (status, [(header::CONTENT_TYPE, "application/json")], text).into_response()
}
