namespace BoothWatch.Verdicts;

/// <summary>Unit, allowed range and source of one number of the policy, kept beside it so that checks and documents cannot drift apart.</summary>
/// <param name="unit">Unit of the number, for example <c>°C</c>.</param>
/// <param name="least">Least allowed value.</param>
/// <param name="most">Greatest allowed value.</param>
/// <param name="source">Where the default comes from, or <c>common practice, no source</c>, or <c>own choice</c>.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class PolicyLimitAttribute(string unit, double least, double most, string source) : Attribute
{
    /// <summary>Unit of the number.</summary>
    public string Unit { get; } = unit;

    /// <summary>Least allowed value.</summary>
    public double Least { get; } = least;

    /// <summary>Greatest allowed value.</summary>
    public double Most { get; } = most;

    /// <summary>Where the default comes from.</summary>
    public string Source { get; } = source;
}
