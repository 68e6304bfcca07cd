namespace LabPipeline.Board.Layout;

/// <summary>What a page says after an action, by a word in its address; the sentence is a text, never the address itself.</summary>
public static class Said
{
    public const string WrongSignIn = "wrong-sign-in";
    public const string Locked = "locked";
    public const string SignedOut = "signed-out";
    public const string NotTheSame = "not-the-same";
    public const string WrongPassword = "wrong-password";
    public const string WeakPassword = "weak-password";
    public const string PasswordSet = "password-set";
    public const string PersonMade = "person-made";
    public const string PersonChanged = "person-changed";
    public const string PersonRefused = "person-refused";
    public const string KeyEnded = "key-ended";
    public const string KeyRefused = "key-refused";
    public const string Seen = "seen";
    public const string Settled = "settled";
    public const string NotOpen = "not-open";
    public const string ReasonMissing = "reason-missing";
    public const string TakenOut = "taken-out";
    public const string NotTakenOut = "not-taken-out";
    public const string Accepted = "accepted";
    public const string NothingAccepted = "nothing-accepted";
    public const string LimitSet = "limit-set";
    public const string LimitNotKnown = "limit-not-known";
    public const string NotANumber = "not-a-number";
    public const string NotADay = "not-a-day";
    public const string LowAboveHigh = "low-above-high";
    public const string TooFewRuns = "too-few-runs";
    public const string TestAsked = "test-asked";
    public const string NoSuchChannel = "no-such-channel";

    public static readonly IReadOnlyList<string> All =
    [
        WrongSignIn, Locked, SignedOut, NotTheSame, WrongPassword, WeakPassword, PasswordSet, PersonMade, PersonChanged, PersonRefused, KeyEnded,
        KeyRefused, Seen, Settled, NotOpen, ReasonMissing, TakenOut, NotTakenOut, Accepted, NothingAccepted,
        LimitSet, LimitNotKnown, NotANumber, NotADay, LowAboveHigh, TooFewRuns, TestAsked, NoSuchChannel,
    ];
}
