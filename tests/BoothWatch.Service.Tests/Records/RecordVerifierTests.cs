using System.Text;
using System.Text.Json;
using BoothWatch.Service.Records;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Service.Tests.Records;

/// <summary>A change of the data is found, wherever it is.</summary>
public sealed class RecordVerifierTests
{
    private static readonly RecordDocument Document = SampleRecord.Document(4);
    private static readonly byte[] Json = Document.Json();
    private static readonly byte[] Table = RecordCsv.Write(Document);
    private static readonly byte[] Metadata = CsvMetadata.Write(Document, "record.csv");

    [Fact]
    public void Files_AsWritten_Match()
    {
        Assert.True(RecordVerifier.Json(Json).Matches);
        Assert.True(RecordVerifier.Csv(Table, Metadata).Matches);
        Assert.Equal(Document.Sha256, RecordVerifier.Csv(Table, Metadata).Sha256);
    }

    [Fact]
    public void Hash_IsThatOfAnotherImplementation()
    {
        // SHA-256 (FIPS 180-4) over the canonical form as ECMAScript's own JSON.stringify gives it for sorted members: made with Node.js 20,
        // JSON.stringify({"a":[1.5,null,"ü"],"b":"x"}) | sha256sum.
        using JsonDocument json = JsonDocument.Parse("""{ "b": "x", "a": [ 1.50, null, "\u00fc" ] }""");
        Assert.Equal("0aee29df83d0746b98af35c0162f915d1d09c25fea8932feabf7d6aebd392133", RecordDocument.Hash(json.RootElement));
    }

    [Fact]
    public void Json_WrittenOtherwiseButWithTheSameData_StillMatches()
    {
        using JsonDocument json = JsonDocument.Parse(Json);
        Assert.True(RecordVerifier.Json(JsonSerializer.SerializeToUtf8Bytes(json.RootElement)).Matches);
    }

    [Property(MaxTest = 300)]
    public bool Json_WithOneByteAltered_IsFoundUnlessTheDataIsTheSame(NonNegativeInt place, byte value)
    {
        byte[] altered = [.. Json];
        altered[place.Get % altered.Length] = value;
        return RecordVerifier.Json(altered).Matches == SameData(altered);
    }

    [Property(MaxTest = 300)]
    public Property Table_WithOneByteAltered_IsFound(NonNegativeInt place, byte value)
    {
        byte[] altered = [.. Table];
        altered[place.Get % altered.Length] = value;
        return (RecordVerifier.Csv(altered, Metadata).Matches == altered.AsSpan().SequenceEqual(Table)).ToProperty();
    }

    [Theory]
    [InlineData("\"airTemperatureC\": 2", "\"airTemperatureC\": 1")]
    [InlineData("\"verdict\": \"spray\"", "\"verdict\": \"wait\"")]
    [InlineData("\"why\": \"read the cup again\"", "\"why\": \"read the cup agaim\"")]
    [InlineData("\"isDemo\": false", "\"isDemo\": true")]
    [InlineData("\"sha256\": \"", "\"sha256\": \"0")]
    [InlineData("\"issued\": {", "\"note\": \"all is well\", \"issued\": {")]
    [InlineData("\"format\": 1,", "\"format\": 1, \"format\": 1,")]
    public void Json_WithAnAlteredValue_IsFound(string was, string isNow)
    {
        string text = Encoding.UTF8.GetString(Json);
        int at = text.IndexOf(was, StringComparison.Ordinal);
        Assert.True(at >= 0, $"the sample holds no {was}");
        string altered = text[..at] + isNow + text[(at + was.Length)..];
        Assert.False(RecordVerifier.Json(Encoding.UTF8.GetBytes(altered)).Matches);
    }

    [Fact]
    public void Table_WithAnAlteredCell_IsNamedByRowAndColumn()
    {
        string altered = Encoding.UTF8.GetString(Table).Replace("blushed", "clear", StringComparison.Ordinal);
        RecordCheck check = RecordVerifier.Csv(Encoding.UTF8.GetBytes(altered), Metadata);
        Assert.False(check.Matches);
        Assert.Contains("row 4, outcome: the file says 'clear', the record 'blushed'", check.Finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_WithAnAlteredUnitInItsMetadata_IsFound()
    {
        string altered = Encoding.UTF8.GetString(Metadata).Replace("\"CEL\"", "\"FAH\"", StringComparison.Ordinal);
        Assert.False(RecordVerifier.Csv(Table, Encoding.UTF8.GetBytes(altered)).Matches);
    }

    [Fact]
    public void Table_OfAnotherRecord_DoesNotMatch() =>
        Assert.False(RecordVerifier.Csv(RecordCsv.Write(SampleRecord.Document(4, "another piece")), Metadata).Matches);

    private static bool SameData(byte[] altered)
    {
        try
        {
            using JsonDocument was = JsonDocument.Parse(Json);
            using JsonDocument isNow = JsonDocument.Parse(altered, new JsonDocumentOptions { AllowDuplicateProperties = false });
            return isNow.RootElement.ValueKind == JsonValueKind.Object
                && isNow.RootElement.EnumerateObject().Select(member => member.Name).SequenceEqual(was.RootElement.EnumerateObject().Select(member => member.Name))
                && new[] { "sha256", "canonicalization", "record" }.All(name => JsonElement.DeepEquals(was.RootElement.GetProperty(name), isNow.RootElement.GetProperty(name)));
        }
        catch (Exception notJson) when (notJson is JsonException or InvalidOperationException)
        {
            return false;
        }
    }
}
