using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.JSInterop;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;

namespace Shaftwright.Pages.Outbox;

/// <summary>Sends what waits on this device to the laptop, and fetches what the laptop has. It may fail at any point and be
/// run again: the laptop applies each entry once by its id.</summary>
public sealed class Sender : IDisposable
{
    private const int AtOnce = 50;

    private readonly HttpClient _http;
    private readonly DeviceStore _device;
    private readonly JobShelf _shelf;
    private DotNetObjectReference<Sender>? _self;
    private bool _busy;
    private bool _again;
    private readonly Dictionary<string, long> _revisions = [];

    /// <summary>Makes one; there is one.</summary>
    public Sender(HttpClient http, DeviceStore device, JobShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        _http = http;
        _device = device;
        _shelf = shelf;
        _shelf.Waits += () => _ = Nudge();
    }

    /// <summary>True when the laptop answered last time; null before the first try.</summary>
    public bool? Reached { get; private set; }

    /// <summary>True when another job book answered last time than the one that what is kept here belongs to: then nothing is
    /// sent to it and nothing taken from it.</summary>
    public bool OtherBook { get; private set; }

    /// <summary>True when the laptop does not let this device in: it is not paired, or not any more. What waits stays here until it
    /// is paired again.</summary>
    public bool NotPaired { get; private set; }

    /// <summary>Raised when <see cref="Reached"/>, <see cref="OtherBook"/> or <see cref="NotPaired"/> may have changed.</summary>
    public event Action? Changed;

    /// <summary>Asks the laptop which job book it serves; null when it does not answer in time.</summary>
    /// <param name="patience">How long to wait for it.</param>
    public async Task<string?> Served(TimeSpan patience)
    {
        using var enough = new CancellationTokenSource(patience);
        try
        {
            var health = await _http.GetFromJsonAsync(
                new Uri("api/health", UriKind.Relative),
                ExchangeJson.Default.HealthReply,
                enough.Token
            );
            NotPaired = false;
            return string.IsNullOrEmpty(health?.Book) ? null : health.Book;
        }
        catch (HttpRequestException e) when (e.StatusCode == HttpStatusCode.Unauthorized)
        {
            NotPaired = true;
            return null;
        }
        catch (Exception e)
            when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            return null;
        }
    }

    /// <summary>Begins to send, now and whenever it is worth it.</summary>
    public async Task Start()
    {
        // Each request names its book, so that not even one that is on its way while books are changed reaches another.
        _http.DefaultRequestHeaders.Add(HealthReply.BookHeader, _device.Book);
        _self = DotNetObjectReference.Create(this);
        await _device.Watch(_self);
        _ = Nudge();
    }

    /// <summary>Tries to send and to fetch. One try at a time; a call meanwhile asks for one more after it.</summary>
    [JSInvokable]
    public async Task Nudge()
    {
        if (_busy)
        {
            _again = true;
            return;
        }
        _busy = true;
        try
        {
            do
            {
                _again = false;
                await Send();
                await Fetch();
                Reached = true;
                OtherBook = NotPaired = false;
            } while (_again);
        }
        catch (Exception e)
            when (e is HttpRequestException or TaskCanceledException or JsonException)
        {
            // No network, no laptop, or something else that answers at its address: everything stays here and is tried again.
            Reached = false;
            var status = (e as HttpRequestException)?.StatusCode;
            OtherBook = status == HttpStatusCode.Conflict;
            // Out of reach says nothing about it, and another book's answer not about the pairing with that one.
            if (status == HttpStatusCode.Unauthorized)
                NotPaired = true;
        }
        finally
        {
            _busy = false;
            Changed?.Invoke();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _self?.Dispose();
        _http.Dispose();
    }

    private async Task Send()
    {
        while (true)
        {
            await _shelf.Refresh();
            var rows = _shelf.Waiting.Where(r => !r.Refused).Take(AtOnce).ToList();
            if (rows.Count == 0)
                return;
            using var body = new StringContent(
                "[" + string.Join(",", rows.Select(r => r.Text)) + "]",
                Encoding.UTF8,
                "application/json"
            );
            using var response = await _http.PostAsync(
                new Uri("api/edits", UriKind.Relative),
                body
            );
            response.EnsureSuccessStatusCode();
            var outcomes =
                await response.Content.ReadFromJsonAsync(
                    ExchangeJson.Default.IReadOnlyListEditReply
                ) ?? [];
            var answers = outcomes
                .Where(o => o.Id is not null)
                .Select(o => new EditAnswer(o.Id!.Value.ToString(), o.Accepted, o.Reason))
                .ToList();
            await _device.Answered(answers);
            // Without an answer to any of them the same ones would be sent for ever.
            if (!rows.Exists(r => answers.Exists(a => a.Id == r.Id)))
                return;
        }
    }

    private async Task Fetch()
    {
        var jobs =
            await _http.GetFromJsonAsync(
                new Uri("api/jobs?putAway=true", UriKind.Relative),
                ExchangeJson.Default.IReadOnlyListJobListing
            ) ?? [];
        var changed = false;
        foreach (var job in jobs)
        {
            // Only what moved since it was last taken over is asked for.
            if (_revisions.GetValueOrDefault(job.Id, -1) == job.Revision)
                continue;
            var reply = await _http.GetFromJsonAsync(
                new Uri("api/jobs/" + Uri.EscapeDataString(job.Id), UriKind.Relative),
                ExchangeJson.Default.JobReply
            );
            if (
                reply?.Document is not JsonObject received
                || JobJson.Read(received).Document is not { } document
            )
                continue;
            switch (await _device.Receive(job.Id, JobJson.Write(document)))
            {
                case Received.Taken:
                    changed = true;
                    _revisions[job.Id] = reply.Revision;
                    break;
                case Received.Same:
                    _revisions[job.Id] = reply.Revision;
                    break;
                case Received.Held:
                    break;
            }
        }
        if (changed)
            await _shelf.Refresh();
    }
}
