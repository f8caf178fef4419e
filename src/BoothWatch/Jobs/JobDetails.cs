namespace BoothWatch.Jobs;

/// <summary>What a job is about: all of it can be corrected.</summary>
/// <param name="Piece">The piece, in the shop's words, 1 to 120 characters.</param>
/// <param name="Finish">The finish, in the shop's words, for example <c>clear lacquer, satin</c>; may be empty.</param>
/// <param name="Schedule">Id of the schedule in config/schedules; null: none, and no timers.</param>
/// <param name="Note">Anything else; may be empty.</param>
public sealed record JobDetails(string Piece, string Finish, string? Schedule, string Note = "");
