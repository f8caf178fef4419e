namespace BoothWatch.Service.Records;

/// <summary>What a check of a file found.</summary>
/// <param name="Matches">True when the data is as it was written out; false when something was altered.</param>
/// <param name="Document">The JSON of the record in the file; null when it could not be read.</param>
/// <param name="Sha256">The SHA-256 reckoned from the data; null when there was no data to read.</param>
/// <param name="Finding">What was found, in words.</param>
internal sealed record RecordCheck(bool Matches, System.Text.Json.JsonElement? Document, string? Sha256, string Finding)
{
    public static RecordCheck Altered(string finding) => new(false, null, null, finding);
}
