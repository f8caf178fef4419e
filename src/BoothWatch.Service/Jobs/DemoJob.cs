namespace BoothWatch.Service.Jobs;

/// <summary>An invented job.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Finish">The finish.</param>
/// <param name="Note">Anything else.</param>
/// <param name="Finished">Whether it is done.</param>
/// <param name="Coats">Its coats.</param>
internal sealed record DemoJob(string Piece, string Finish, string Note, bool Finished, IReadOnlyList<DemoCoat> Coats);
