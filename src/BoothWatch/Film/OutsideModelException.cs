namespace BoothWatch.Film;

/// <summary>Air or piece is outside the range of the drying-film model, so it has no answer.</summary>
public sealed class OutsideModelException : DryingFailedException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="what">What is outside, for example <c>air temperature</c>.</param>
    /// <param name="value">Its value, °C or Pa.</param>
    /// <param name="lowest">Lowest value of the model, in the same unit.</param>
    /// <param name="highest">Highest value of the model, in the same unit.</param>
    /// <param name="isTemperature">True for °C, false for Pa.</param>
    public OutsideModelException(string what, double value, double lowest, double highest, bool isTemperature)
        : base(FormattableString.Invariant($"outside the range of the drying-film model: {what} is {value} {(isTemperature ? "°C" : "Pa")}, the model holds from {lowest} to {highest}")) =>
        (What, Value, Lowest, Highest, IsTemperature) = (what, value, lowest, highest, isTemperature);

    /// <summary>What is outside, for example <c>air temperature</c>.</summary>
    public string What { get; }

    /// <summary>Its value, °C or Pa.</summary>
    public double Value { get; }

    /// <summary>Lowest value of the model, in the same unit.</summary>
    public double Lowest { get; }

    /// <summary>Highest value of the model, in the same unit.</summary>
    public double Highest { get; }

    /// <summary>True for °C, false for Pa.</summary>
    public bool IsTemperature { get; }
}
