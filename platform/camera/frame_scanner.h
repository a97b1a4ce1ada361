// A scanner that is fed frames through a QVideoSink. Where they come from is for its kinds to say:
// CameraScanner and VideoScanner share everything else.
//
//   source -> sink_ -> newest_ (one frame, any thread) -> interface -> viewfinder
//                                                             |
//                                                             +-> FrameReader -> Steadiness -> signals
//                                                             +-> MatWatch -> matSeen, where it is wanted
//
// Frames may arrive in any thread; only the newest waits for the interface, and only one is decoded at
// a time. All signals come in the thread of the interface, none after stop() has returned. Do not
// destroy a scanner from within one of its signals; stop() is allowed there. A kind owns its source
// and must have ended it when its own destructor is through.
#pragma once

#include <QVideoSink>
#include <memory>
#include <mutex>

#include "camera/frame_reader.h"
#include "camera/mat_watch.h"
#include "camera/steadiness.h"
#include "ports/scanner.h"

namespace burrow {

class FrameScanner : public Scanner {
    Q_OBJECT

public:
    explicit FrameScanner(Decoder decoder, QObject* parent = nullptr);
    ~FrameScanner() override;

    [[nodiscard]] QImage latestPicture() const final;
    /// The same as it came; not valid where that is null.
    [[nodiscard]] const QVideoFrame& latestFrame() const { return latest_; }
    /// How many frames the decoder took since the scanner was made; the others were only shown.
    [[nodiscard]] int framesRead() const { return framesRead_; }
    /// Likewise, in how many a mat was looked for.
    [[nodiscard]] int matsLookedFor() const { return matsLookedFor_; }
    void start() final;
    void stop() final;

protected:
    /// Where the source puts its frames.
    [[nodiscard]] QVideoSink& sink() { return sink_; }
    [[nodiscard]] bool isOpen() const {
        return state() == State::Starting || state() == State::Running;
    }
    /// Counts the times that the source was opened or closed, to tell late news from news.
    [[nodiscard]] int run() const { return run_; }
    /// Closes the source and says why. Does nothing when that run is over already. Not for use within
    /// a signal of the source.
    void giveUp(State why, int run);

private:
    /// Starts the source. Trouble is told through giveUp(), at once or later.
    virtual void open() = 0;
    /// Ends the source, in whatever state it is.
    virtual void close() = 0;

    void keepNewest(const QVideoFrame& frame);
    void handOn();
    void take(const std::optional<Reading>& reading, int run);
    void end(State state);
    void takeMat(const MatSight& sight, int run);
    void show(const QVideoFrame& frame);

    QVideoSink sink_;
    std::mutex mutex_;
    QVideoFrame newest_;   ///< behind mutex_
    bool called_ = false;  ///< behind mutex_: the interface was told that a frame is there
    QVideoFrame latest_;
    int run_ = 0;
    int framesRead_ = 0;
    int matsLookedFor_ = 0;
    Steadiness steadiness_;
    // Last, so that they end while all that they tell is still there.
    FrameReader reader_;
    std::unique_ptr<MatWatch> watch_;  ///< from when a mat is first looked for
};

}  // namespace burrow
