using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>What an error of the file or the database means for the journal, in words with the fix.</summary>
/// <remarks>Result codes: https://www.sqlite.org/rescode.html</remarks>
internal static class JournalTrouble
{
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int IoError = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    public static bool IsDamage(SqliteException error) => error.SqliteErrorCode is Corrupt or NotADatabase;

    /// <summary>After these the transaction is rolled back and the connection is as good as before.</summary>
    public static bool LeavesConnectionIntact(SqliteException error) => error.SqliteErrorCode is Busy or Locked or Full;

    public static string Explain(Exception error, string path)
    {
        string? folder = Path.GetDirectoryName(path);
        return error switch
        {
            SqliteException { SqliteErrorCode: Busy or Locked } =>
                $"{path} is locked by another program: close it (only one BoothWatch may write to a folder); writing goes on by itself then",
            SqliteException { SqliteErrorCode: Full } =>
                $"the disk of {path} is full: free space there, or lower series:rawDays; writing goes on by itself then",
            SqliteException { SqliteErrorCode: ReadOnly or CannotOpen } or UnauthorizedAccessException =>
                $"{path} cannot be written: give this user write permission for {folder}, or name another folder in series:folder",
            SqliteException { SqliteErrorCode: Corrupt or NotADatabase } =>
                $"{path} is damaged: it will be checked and, if so, set aside and a new one started ({error.Message})",
            SqliteException { SqliteErrorCode: IoError } or IOException =>
                $"{path} could not be read or written: check the disk or card of {folder} ({error.Message})",
            _ => $"{path} refused the statement: {error.Message}",
        };
    }
}
