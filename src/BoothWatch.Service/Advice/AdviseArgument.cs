namespace BoothWatch.Service.Advice;

/// <summary>One argument of <c>advise</c>, which is also a column of its table.</summary>
/// <param name="Name">Name without dashes.</param>
/// <param name="ValueName">Name of the value in the help.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Range">What it may be, with units.</param>
/// <param name="Default">What holds when it is not given.</param>
/// <param name="Example">A good value.</param>
/// <param name="Measure">How its number is read; null for a word.</param>
internal sealed record AdviseArgument(
    string Name,
    string ValueName,
    string Meaning,
    string Range,
    string Default,
    string Example,
    Measure? Measure = null)
{
    /// <summary>One line of help.</summary>
    public string Help => $"{Meaning}: {Range}. Default: {Default}. Example: --{Name} {Example}";

    /// <summary>The error for a value, naming range and example.</summary>
    public ArgumentError Error(string? value, string problem) =>
        new(Name, value, $"{problem}; give {(Measure is { } measure ? $"{measure.What} {Range}" : Range)}, for example {Example}");
}
