namespace BoothWatch.Service.Page;

/// <summary>Breaks words into lines, for drawings, where nothing else does.</summary>
internal static class TextLines
{
    /// <summary>The lines, none longer than <paramref name="most"/> letters; a longer word, such as a path, is cut.</summary>
    public static string[] Of(string text, int most)
    {
        List<string> lines = [""];
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => word.Chunk(most)).Select(letters => new string(letters)))
        {
            string line = lines[^1].Length == 0 ? word : $"{lines[^1]} {word}";
            if (line.Length <= most)
            {
                lines[^1] = line;
            }
            else
            {
                lines.Add(word);
            }
        }

        return [.. lines];
    }
}
