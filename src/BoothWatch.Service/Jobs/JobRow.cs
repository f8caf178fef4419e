namespace BoothWatch.Service.Jobs;

/// <summary>A job as a list shows it.</summary>
/// <param name="Id">Number of the job.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Finish">The finish.</param>
/// <param name="Started">When it began, UTC.</param>
/// <param name="Finished">When it was finished, UTC; null while it runs.</param>
/// <param name="Coats">Number of coats.</param>
/// <param name="Blushed">Coats marked as blushed.</param>
/// <param name="LeastMarginC">Least blush margin of its coats, °C; null when none is known.</param>
/// <param name="IsDemo">True for the demo's own jobs.</param>
public sealed record JobRow(
    long Id, string Piece, string Finish, DateTimeOffset Started, DateTimeOffset? Finished, int Coats, int Blushed, double? LeastMarginC, bool IsDemo);
