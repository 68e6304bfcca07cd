using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;

namespace LabPipeline.Benchmarks;

/// <summary>Somebody with a browser: opens a page, stays on it for some seconds, and while staying asks every second whether something changed, as the board's script does.</summary>
internal sealed partial class BoardUser : IDisposable
{
    private static readonly TimeSpan AskEvery = TimeSpan.FromSeconds(1);

    private readonly HttpClient _client;
    private readonly Random _random;

    public BoardUser(Uri board, int number)
    {
        _random = new Random(number);
        _client = new HttpClient(new SocketsHttpHandler { UseProxy = false, CookieContainer = new CookieContainer() }) { BaseAddress = board };
    }

    public async Task SignInAsync(string name, string password)
    {
        var page = await _client.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var form = new FormUrlEncodedContent(
        [
            KeyValuePair.Create("name", name), KeyValuePair.Create("password", password), KeyValuePair.Create("__RequestVerificationToken", Token().Match(page).Groups[1].Value),
        ]);
        using var answer = await _client.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>Opens each page some times.</summary>
    public async Task VisitAsync(IReadOnlyList<BoardPage> pages, int times, Action<string, double> note)
    {
        for (var round = 0; round < times; round++)
        {
            foreach (var page in pages)
            {
                await AskAsync(page.Name, page.Address(_random), note);
            }
        }
    }

    /// <summary>Looks at pages until stopped.</summary>
    /// <param name="pages">The pages.</param>
    /// <param name="note">Told the name of a page, or of the question for news, and how long its answer took in milliseconds.</param>
    /// <param name="stop">Ends it between two requests.</param>
    public async Task LookAsync(IReadOnlyList<BoardPage> pages, Action<string, double> note, CancellationToken stop)
    {
        // People do not begin all at once.
        await Task.Delay(AskEvery * _random.NextDouble() * 3, CancellationToken.None);
        while (!stop.IsCancellationRequested)
        {
            var page = pages[_random.Next(pages.Count)];
            var address = page.Address(_random);
            await AskAsync(page.Name, address, note);
            var seen = page.IsLive ? await AskAsync(BoardLoad.News, "/live", note) : null;
            for (var left = _random.Next(3, 10); left > 0 && !stop.IsCancellationRequested; left--)
            {
                await Task.Delay(AskEvery * (0.9 + (_random.NextDouble() * 0.2)), CancellationToken.None);
                if (page.IsLive && await AskAsync(BoardLoad.News, "/live", note) is var position && position != seen)
                {
                    seen = position;
                    await AskAsync(page.Name, address, note);
                }
            }
        }
    }

    public void Dispose() => _client.Dispose();

    private async Task<string> AskAsync(string name, string address, Action<string, double> note)
    {
        var watch = Stopwatch.StartNew();
        using var answer = await _client.GetAsync(new Uri(address, UriKind.Relative));
        var text = await answer.Content.ReadAsStringAsync();
        answer.EnsureSuccessStatusCode();
        note(name, watch.Elapsed.TotalMilliseconds);
        return text;
    }

    [GeneratedRegex("__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
