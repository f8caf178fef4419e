namespace BoothWatch.Service.Setup;

/// <summary>What the configuration file says of one role.</summary>
/// <param name="Name">The role, for example <c>boothAir</c>.</param>
/// <param name="Part">Kind of part, or none.</param>
/// <param name="Source">real or emulated.</param>
/// <param name="Bus">Parts on I²C: number of the bus; else null.</param>
/// <param name="Address">Parts on I²C: the address in hexadecimal; else null.</param>
/// <param name="Pin">GPIO number that a contact has, or would have; null for other roles.</param>
/// <param name="IsEmulated">Whether it measures the scripted shop; null when it is not fitted.</param>
public sealed record SetupRole(string Name, string Part, string Source, int? Bus, string? Address, int? Pin, bool? IsEmulated);
