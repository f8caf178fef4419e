namespace BoothWatch.Service.Advice;

/// <summary>One wrong argument or table cell.</summary>
/// <param name="Field">Name of the argument without dashes, which is also the column name; empty when a table row cannot be read at all.</param>
/// <param name="Value">What was given; null when nothing was.</param>
/// <param name="Problem">What is wrong, its range, and an example.</param>
internal sealed record ArgumentError(string Field, string? Value, string Problem)
{
    /// <summary>The error of a command-line argument.</summary>
    public string OnCommandLine => Value is null ? $"--{Field}: {Problem}" : $"--{Field} is '{Value}': {Problem}";

    /// <summary>The error of a table cell.</summary>
    public string InTable => Field.Length == 0 ? Problem : Value is null ? $"{Field}: {Problem}" : $"{Field} is '{Value}': {Problem}";
}
