using BoothWatch.Records;

namespace BoothWatch.Service.Records;

/// <summary>One column of the CSV, and what its metadata say of it.</summary>
/// <param name="Name">Name, as in the header.</param>
/// <param name="Title">Name for people.</param>
/// <param name="Datatype">Built-in datatype of the CSV on the Web vocabulary: string, integer, decimal, boolean or dateTimeStamp.</param>
/// <param name="Description">What it means.</param>
/// <param name="Value">The value of a coat: text, a number, a truth or a time; null leaves the cell empty.</param>
internal sealed record RecordColumn(string Name, string Title, string Datatype, string Description, Func<RecordDocument, RecordCoat, object?> Value)
{
    /// <summary>The unit of its numbers; null for none.</summary>
    public RecordUnit? Unit { get; init; }

    /// <summary>True when no cell may be empty.</summary>
    public bool Required { get; init; }
}
