using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace BoothWatch.Readings;

/// <summary>Why something may not be used, in words a finisher understands. Temperatures in it stay numbers, so that whoever shows it chooses their unit.</summary>
/// <param name="words">The words; temperatures among them are <see cref="Degrees"/>.</param>
public sealed class Cause(FormattableString words) : IEquatable<Cause>
{
    /// <summary>A cause without temperatures.</summary>
    /// <param name="words">The words; null for none.</param>
    [return: NotNullIfNotNull(nameof(words))]
    public static implicit operator Cause?(string? words) => words is null ? null : new Cause($"{words}");

    /// <summary>The words with their temperatures written by the caller.</summary>
    /// <param name="write">Writes a temperature.</param>
    public string Words(Func<Degrees, string> write) =>
        string.Format(CultureInfo.InvariantCulture, words.Format, [.. words.GetArguments().Select(value => value is Degrees degrees ? write(degrees) : value)]);

    /// <summary>The words with temperatures in °C.</summary>
    public override string ToString() => Words(degrees => degrees.ToString());

    /// <inheritdoc/>
    public bool Equals(Cause? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Cause);

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);
}
