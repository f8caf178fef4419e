namespace BoothWatch.Service.Limits;

/// <summary>What the journal has to say of the limit.</summary>
/// <param name="From">Coats begun at or after, UTC.</param>
/// <param name="Coats">The coats that count, newest first.</param>
/// <param name="NotMarked">Coats whose air is known and whose outcome nobody marked.</param>
/// <param name="DrySpray">Coats left out as dry spray: half dry as they landed, they say nothing, and their haze is taken for blush.</param>
/// <param name="AirNotKnown">Coats whose margin is not known.</param>
public sealed record LimitEvidence(DateTimeOffset From, IReadOnlyList<LimitEvidenceCoat> Coats, int NotMarked, int DrySpray, int AirNotKnown)
{
    /// <summary>Coats that could count if they were all marked.</summary>
    public int InAll => Coats.Count + NotMarked;

    /// <summary>True when the same coats count.</summary>
    public bool SaysAs(LimitEvidence? other) => other is not null && InAll == other.InAll && Coats.SequenceEqual(other.Coats);
}
